package org.bookholder.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.bookholder.desk.Actions;
import org.bookholder.desk.Admission;
import org.bookholder.desk.DeskKeys;
import org.bookholder.desk.DeskSession;
import org.bookholder.desk.Feed;
import org.bookholder.desk.Trail;
import org.bookholder.desk.http.DeskDoor;
import org.bookholder.desk.http.DeskServer;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.DeskStage;
import org.bookholder.runtime.Workers;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;

/** A desk that is open, with the thread that keeps its pages informed. */
final class OpenDesk implements AutoCloseable {
    private final DeskServer server;
    private final Workers workers;
    private final DeskKeys keys;
    private final boolean network;

    private OpenDesk(DeskServer server, Workers workers, DeskKeys keys, boolean network) {
        this.server = server;
        this.workers = workers;
        this.keys = keys;
        this.network = network;
    }

    /**
     * Opens the desk of a session.
     *
     * @param trail what went before
     * @param live whether takes can be rolled
     */
    static OpenDesk of(
            Surroundings here,
            DeskOptions options,
            SessionFolder folder,
            Trail trail,
            Supplier<SessionState> state,
            Consumer<Command> commands,
            boolean live)
            throws ProblemException {
        SecureRandom random = new SecureRandom();
        DeskKeys kept = DeskKeys.of(folder.path(), random);
        DeskDoor door = options.door(kept.port());
        DeskSession session = new Session(here, folder, state, commands, live);
        Feed feed = new Feed(session, trail, Long.toHexString(random.nextLong()));
        Admission admission = new Admission(kept, options.network(), random, here.nanoTime());
        DeskServer server =
                DeskServer.open(door, session, feed, new Actions(session, here.clock()), admission, here.nanoTime());
        DeskKeys keys = kept.at(server.port());
        Workers workers = new Workers((stage, failure) -> {});
        try {
            keys.keep(folder.path());
            workers.takeOn(new DeskStage(feed, here.nanoTime()));
            return new OpenDesk(server, workers, keys, options.network());
        } catch (ProblemException e) {
            server.close();
            throw e;
        }
    }

    /** The address to open on this machine. */
    String address() {
        return "http://127.0.0.1:" + server.port() + "/#" + keys.key();
    }

    /** Says where it can be reached. */
    void tell(Terminal terminal) {
        terminal.out().println("Desk: " + address());
        if (network) {
            List<String> addresses = DeskDoor.addresses();
            String host = addresses.isEmpty() ? "this-machine" : addresses.get(0);
            terminal.out()
                    .printf(
                            Locale.ROOT,
                            "Desk on other devices: http://%s:%d/  join code %s; to look only %s%n",
                            host,
                            server.port(),
                            keys.act(),
                            keys.look());
        }
        terminal.out().flush();
    }

    /** What the reading window says of it before the lesson is begun; empty if it is for this machine only. */
    String invitation() {
        if (!network) {
            return "";
        }
        String host = DeskDoor.addresses().stream().findFirst().orElse("this machine");
        return "desk: " + host + ":" + server.port() + "  join code " + keys.act();
    }

    @Override
    public void close() {
        server.close();
        workers.close();
    }

    /** What the desk sees of the session. */
    private record Session(
            Surroundings here,
            SessionFolder folder,
            Supplier<SessionState> shown,
            Consumer<Command> commands,
            boolean live)
            implements DeskSession {
        @Override
        public SessionState state() {
            return shown.get();
        }

        @Override
        public void tell(Command command) {
            commands.accept(command);
        }

        @Override
        public Path recording(int take) {
            return folder.takeFile(take);
        }

        @Override
        public void writePickups(OutputStream out) throws IOException {
            PrintedPickups.write(shown.get(), here.zone(), out);
        }
    }
}
