package org.bookholder.runtime;

import java.util.List;
import java.util.Optional;
import org.bookholder.session.Command;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;

/** Turns a request into commands when its turn comes, and carries them out. */
final class RequestHandling {
    private RequestHandling() {}

    /** Carries out a request; returns false if it was refused, and tells {@code reply} why. */
    static boolean carryOut(Request request, Request.Reply reply, SessionState state, Command.Handler handler) {
        Optional<List<Command>> commands = commands(request, reply, state);
        commands.ifPresent(all -> all.forEach(command -> command.to(handler)));
        return commands.isPresent();
    }

    /** The same if no take can be recorded: a request that concerns one is refused as a whole. */
    static boolean noteOnly(Request request, Request.Reply reply, SessionState state, NoteCommand.Handler handler) {
        Optional<List<Command>> commands = commands(request, reply, state);
        if (commands.isEmpty()) {
            return false;
        }
        List<NoteCommand> notes = commands.get().stream()
                .filter(NoteCommand.class::isInstance)
                .map(NoteCommand.class::cast)
                .toList();
        if (notes.size() < commands.get().size()) {
            reply.refused("this session is only reviewed, no take can be recorded");
            return false;
        }
        notes.forEach(note -> note.note(handler));
        return true;
    }

    private static Optional<List<Command>> commands(Request request, Request.Reply reply, SessionState state) {
        try {
            return Optional.of(request.commands(state));
        } catch (IllegalArgumentException e) {
            reply.refused(String.valueOf(e.getMessage()));
            return Optional.empty();
        }
    }
}
