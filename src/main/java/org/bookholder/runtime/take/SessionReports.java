package org.bookholder.runtime.take;

import org.bookholder.runtime.source.Revision;
import org.bookholder.session.Command;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.sound.Spoil;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/** What stages and people tell the owner of a session. Each is called on the session's thread. */
public interface SessionReports extends Command.Handler {
    /** An ear believes to have heard this in a take. */
    void heard(int take, Hypothesis hypothesis);

    /** So loud were the frames of a take. */
    void heard(int take, FrameLevels levels);

    /** An ear has heard a take up to {@code to}. */
    void heardTo(int take, EarKind ear, StreamTime to);

    /** Something happened that goes into the session as it is. */
    void happened(SessionEvent event);

    /** A stretch of a take's sound cannot be used. */
    void spoiled(int take, Spoil spoil);

    /** The script ear fell behind and did not hear this much. */
    void unheard(StreamTime length);

    /** A take's sound has ended; {@code reason} is for people. */
    void captureEnded(int take, StreamTime at, String reason);

    /** An ear has heard all of a take that it is going to hear. */
    void earDone(int take, EarKind ear);

    /** Another text of the script was saved. */
    void textSaved(Revision revision);

    /** A text was saved that is no script; {@code problem} is for people. */
    void textUnusable(String problem);

    /** The open ear may leave unheard what it has not heard yet. */
    void hurry();

    /** Does what is asked. What ends or begins a take is answered when the journal has that end or beginning. */
    void ask(Request request, Request.Reply reply);

    /** A stage has failed. */
    void failed();
}
