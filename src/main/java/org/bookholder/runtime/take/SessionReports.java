package org.bookholder.runtime.take;

import org.bookholder.runtime.source.Revision;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.Command;
import org.bookholder.session.Request;

/**
 * Receives the reports and requests of stages and people for a session. All methods are called on the session's thread.
 */
public interface SessionReports {
    /** Receives the reports of a take's stages. */
    TakeReports takes();

    /** Carries out people's commands. */
    Command.Handler commands();

    /** A new text of the script was saved. */
    void textSaved(Revision revision);

    /** The saved text is not a valid script; {@code problem} is for people. */
    void textUnusable(String problem);

    /** The text being read could not be saved in the session's folder; {@code problem} is for people. */
    void textNotKept(String problem);

    /**
     * Carries out a request. If it ends or begins a take, it is answered once the journal has saved that end or
     * beginning.
     */
    void ask(Request request, Request.Reply reply);

    /** A stage has failed, and the session continues. */
    void stageFailed(StageFault fault);

    /** A restarted stage works again. */
    void stageRecovered(String role);

    /** An essential stage has failed: the session must end in an orderly way. */
    void failed();
}
