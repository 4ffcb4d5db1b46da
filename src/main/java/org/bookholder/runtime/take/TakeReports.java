package org.bookholder.runtime.take;

import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.sound.Spoil;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/** What the stages of a take tell the owner of its session, on the session's thread. */
public interface TakeReports {
    /** An ear believes to have heard this in a take. */
    void heard(int take, Hypothesis hypothesis);

    /** So loud were the frames of a take. */
    void heard(int take, FrameLevels levels);

    /** An ear has heard a take up to {@code to}. */
    void heardTo(int take, EarKind ear, StreamTime to);

    /** The script ear has not heard a stretch of a take, because it failed. */
    void notHeard(int take, StreamTime from, StreamTime to);

    /** The script ear fell behind and did not hear this much. */
    void unheard(StreamTime length);

    /** Something happened that goes into the session as it is. */
    void happened(SessionEvent event);

    /** A stretch of a take's sound cannot be used. */
    void spoiled(int take, Spoil spoil);

    /** A take's sound has ended. */
    void captureEnded(int take, StreamTime at, TakeEnd reason);

    /** An ear has heard all of a take that it is going to hear. */
    void earDone(int take, EarKind ear);

    /** The open ear may leave unheard what it has not heard yet. */
    void hurry();
}
