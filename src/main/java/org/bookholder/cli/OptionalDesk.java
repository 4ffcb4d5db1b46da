package org.bookholder.cli;

import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;

/** The desk of a reading, if one is wanted and can be opened; without it the reading goes on. */
record OptionalDesk(Optional<SessionDesk> session, Optional<OpenDesk> desk) implements AutoCloseable {
    /** Opens it and says where, or says why there is none. */
    static OptionalDesk open(
            Surroundings here,
            Terminal terminal,
            ReadRequest request,
            SessionFolder folder,
            LiveHistory trail,
            Reading reading) {
        if (request.desk().isEmpty()) {
            return new OptionalDesk(Optional.empty(), Optional.empty());
        }
        SessionDesk session = SessionDesk.of(here, folder, trail, reading.state(), reading::ask, true);
        try {
            OpenDesk desk =
                    OpenDesk.of(here, request.desk().get(), folder.path(), SessionDirectory.of(session.place()));
            desk.tell(terminal);
            return new OptionalDesk(Optional.of(session), Optional.of(desk));
        } catch (ProblemException e) {
            session.close();
            terminal.err().println("bookholder: reading without a desk: " + e.getMessage());
            return new OptionalDesk(Optional.empty(), Optional.empty());
        }
    }

    /** The state as the reading window shows it: before the lesson is begun, with how to come to the desk. */
    Supplier<SessionState> forWindow(Supplier<SessionState> state) {
        String invitation = desk.map(OpenDesk::invitation).orElse("");
        if (invitation.isEmpty()) {
            return state;
        }
        return () -> {
            SessionState now = state.get();
            boolean begun = !now.following().position().equals(ReadingPosition.START);
            return begun || !now.troubles().isEmpty()
                    ? now
                    : now.with(new Trouble(Trouble.Kind.DESK_READY, invitation));
        };
    }

    @Override
    public void close() {
        desk.ifPresent(OpenDesk::close);
        session.ifPresent(SessionDesk::close);
    }
}
