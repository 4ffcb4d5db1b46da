package org.bookholder.app.desk;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.handoff.PickupSheet;
import org.bookholder.desk.Actions;
import org.bookholder.desk.DeskHandOff;
import org.bookholder.desk.DeskSession;
import org.bookholder.desk.Feed;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.ServedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.runtime.DeskStage;
import org.bookholder.runtime.stage.BackgroundTasks;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;

/** One session at the desk, with the threads that keep its pages up to date. */
public final class SessionDesk implements AutoCloseable {
    private final ServedSession place;
    private final Workers workers;

    private SessionDesk(ServedSession place, Workers workers) {
        this.place = place;
        this.workers = workers;
    }

    /**
     * Starts watching a session.
     *
     * @param trail its history so far
     * @param faults receives faults of the desk's stages
     * @param live whether takes can be rolled
     */
    public static SessionDesk of(
            Environment here,
            SessionFolder folder,
            LiveHistory trail,
            Supplier<SessionState> state,
            BiConsumer<Request, Request.Reply> requests,
            FaultListener faults,
            boolean live) {
        BackgroundTasks errands = new BackgroundTasks();
        DeskHandOff handOff = new SessionHandOff(here, folder.path(), state, live, errands);
        DeskSession session = new Session(here, folder, state, requests, handOff, live);
        Feed feed = new Feed(session, trail, Long.toHexString(new SecureRandom().nextLong()), here.zone());
        Workers workers = new Workers(here.nanoTime(), faults);
        workers.takeOn(new DeskStage(feed, here.nanoTime()));
        workers.takeOn(errands);
        return new SessionDesk(new ServedSession(session, feed, new Actions(session, here.clock())), workers);
    }

    public ServedSession place() {
        return place;
    }

    @Override
    public void close() {
        workers.close();
    }

    /** The session as seen by the desk. */
    private record Session(
            Environment here,
            SessionFolder folder,
            Supplier<SessionState> shown,
            BiConsumer<Request, Request.Reply> requests,
            DeskHandOff handOff,
            boolean live)
            implements DeskSession {
        @Override
        public String name() {
            return String.valueOf(folder.path().getFileName());
        }

        @Override
        public SessionState state() {
            return shown.get();
        }

        @Override
        public void ask(Request request, Request.Reply reply) {
            requests.accept(request, reply);
        }

        @Override
        public Path recording(int take) {
            return folder.takeFile(take);
        }

        @Override
        public Path films() {
            return folder.path().resolve("film");
        }

        @Override
        public void writePickups(OutputStream out) throws IOException {
            PickupSheet.write(shown.get(), here.zone(), out);
        }
    }
}
