package org.bookholder.runtime.take;

import org.bookholder.runtime.source.Revision;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.Command;
import org.bookholder.session.Request;

/** What stages and people tell the owner of a session. All of it is called on the session's thread. */
public interface SessionReports {
    /** Who is told what the stages of a take find out. */
    TakeReports takes();

    /** Who does what people ask. */
    Command.Handler commands();

    /** Another text of the script was saved. */
    void textSaved(Revision revision);

    /** A text was saved that is no script; {@code problem} is for people. */
    void textUnusable(String problem);

    /** The text being read could not be kept in the session's folder; {@code problem} is for people. */
    void textNotKept(String problem);

    /** Does what is asked. What ends or begins a take is answered when the journal has that end or beginning. */
    void ask(Request request, Request.Reply reply);

    /** A stage has failed, and the session is to go on. */
    void stageFailed(StageFault fault);

    /** A stage that was started again works. */
    void stageRecovered(String role);

    /** An essential stage has failed: the session is to end in order. */
    void failed();
}
