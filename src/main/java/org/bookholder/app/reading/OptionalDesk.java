package org.bookholder.app.reading;

import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.desk.SessionDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;

/** The desk of a reading, if one is wanted and can be opened; the reading works without it. */
public record OptionalDesk(Optional<SessionDesk> session, Optional<RunningDesk> desk) implements AutoCloseable {
    /** Opens the desk and reports its address, or reports why there is none. */
    static OptionalDesk open(
            Environment here,
            ReadingListener listener,
            ReadingRequest request,
            SessionFolder folder,
            LiveHistory trail,
            Reading reading) {
        if (request.desk().isEmpty()) {
            return new OptionalDesk(Optional.empty(), Optional.empty());
        }
        SessionDesk session = SessionDesk.of(here, folder, trail, reading.state(), reading::ask, reading, true);
        listener.served(session.place());
        if (request.desk().get().hosted()) {
            return new OptionalDesk(Optional.of(session), Optional.empty());
        }
        try {
            RunningDesk desk =
                    RunningDesk.of(here, request.desk().get(), folder.path(), SessionDirectory.of(session.place()));
            listener.deskOpened(desk);
            return new OptionalDesk(Optional.of(session), Optional.of(desk));
        } catch (ProblemException e) {
            session.close();
            listener.warned("reading without a desk: " + e.getMessage());
            return new OptionalDesk(Optional.empty(), Optional.empty());
        }
    }

    /** The state for the reading window; before the lesson begins it also tells of the room on the disk and how to open the desk. */
    Supplier<SessionState> forWindow(Supplier<SessionState> state, String room) {
        String invitation = desk.map(RunningDesk::invitation).orElse("");
        return () -> {
            SessionState now = state.get();
            if (!now.following().position().equals(ReadingPosition.START)
                    || !now.troubles().isEmpty()) {
                return now;
            }
            SessionState told = room.isEmpty() ? now : now.with(new Trouble(Trouble.Kind.ROOM, room));
            return invitation.isEmpty() ? told : told.with(new Trouble(Trouble.Kind.DESK_READY, invitation));
        };
    }

    @Override
    public void close() {
        desk.ifPresent(RunningDesk::close);
        session.ifPresent(SessionDesk::close);
    }
}
