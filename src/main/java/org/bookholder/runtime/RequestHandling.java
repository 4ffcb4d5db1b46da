package org.bookholder.runtime;

import java.util.List;
import org.bookholder.session.Command;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;

/** Turns a request into commands when its turn has come, and has them carried out. */
final class RequestHandling {
    private RequestHandling() {}

    /** Whether it was carried out; if not, {@code reply} was told why. */
    static boolean carryOut(Request request, Request.Reply reply, SessionState state, Command.Handler handler) {
        List<Command> commands;
        try {
            commands = request.commands(state);
        } catch (IllegalArgumentException e) {
            reply.refused(String.valueOf(e.getMessage()));
            return false;
        }
        commands.forEach(command -> command.to(handler));
        return true;
    }
}
