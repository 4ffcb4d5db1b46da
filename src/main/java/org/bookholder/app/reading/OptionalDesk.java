package org.bookholder.app.reading;

import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.app.desk.SessionDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.desk.LiveHistory;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;

/** The desk of a reading, if one is wanted and can be opened; the reading works without it. */
record OptionalDesk(Optional<SessionDesk> session, String invitation) implements AutoCloseable {
    private static final OptionalDesk NONE = new OptionalDesk(Optional.empty(), "");

    /**
     * Shows the reading at the shared desk and reports its address if it was opened now, or reports why there is none.
     *
     * @param states what the desk shows
     */
    static OptionalDesk open(
            Environment here,
            ReadingListener listener,
            ReadingRequest request,
            SessionFolder folder,
            LiveHistory trail,
            Reading reading,
            Supplier<SessionState> states,
            SharedDevices shared) {
        if (request.desk().isEmpty()) {
            return NONE;
        }
        SessionDesk session = SessionDesk.of(here, folder, trail, states, reading::ask, reading, true);
        listener.served(session.place());
        if (request.desk().get().hosted()) {
            return new OptionalDesk(Optional.of(session), "");
        }
        try {
            shared.desk(here, request.desk().get(), folder.path(), session.place())
                    .ifPresent(listener::deskOpened);
            return new OptionalDesk(Optional.of(session), shared.invitation());
        } catch (ProblemException e) {
            session.close();
            listener.warned("reading without a desk: " + e.getMessage());
            return NONE;
        }
    }

    /** The state for the reading window; before the lesson begins it also tells of the room on the disk and how to open the desk. */
    Supplier<SessionState> forWindow(Supplier<SessionState> state, String room) {
        return new ShownStates(state, now -> {
            if (!now.following().position().equals(ReadingPosition.START)
                    || !now.troubles().isEmpty()) {
                return now;
            }
            SessionState told = room.isEmpty() ? now : now.with(new Trouble(Trouble.Kind.ROOM, room));
            return invitation.isEmpty() ? told : told.with(new Trouble(Trouble.Kind.DESK_READY, invitation));
        });
    }

    @Override
    public void close() {
        session.ifPresent(SessionDesk::close);
    }
}
