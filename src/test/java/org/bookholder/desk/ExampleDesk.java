package org.bookholder.desk;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.session.Command;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Readings;
import org.bookholder.testing.Scripts;

/** A session with one take, whose events a test gives. */
public final class ExampleDesk implements DeskSession {
    public final List<Command> told = new CopyOnWriteArrayList<>();
    public final ExampleHandOff handOff;
    private final Path folder;
    private volatile SessionState state = Session.apply(
            Session.begin(
                    Scripts.of("Spring is when a hive decides.", "Buy a dozen frames.", "Turn them to the sun."),
                    FatigueLimits.defaults()),
            List.of(
                    Readings.rolled(1, 0),
                    Readings.settled(Readings.complete(1, 1, 1, 6, 1, 3)),
                    Readings.settled(Readings.complete(1, 2, 2, 4, 4, 6, Readings.swapped(4, "frames", "flames")))));

    public ExampleDesk(Path folder) {
        this.folder = folder;
        handOff = new ExampleHandOff(folder.resolve("handoff"));
    }

    public void happens(SessionEvent event) {
        state = Session.apply(state, event);
    }

    /** Somebody writes a note on line 1. */
    public void writesNote(String text) {
        happens(new SessionEvent.Remarked(state.now(), new Remark.Noted(1, text, false)));
    }

    @Override
    public String name() {
        return "example";
    }

    @Override
    public SessionState state() {
        return state;
    }

    /** If not empty, the reason for which it refuses all further requests. */
    public volatile String fails = "";

    @Override
    public void ask(Request request, Request.Reply reply) {
        if (!fails.isEmpty()) {
            reply.failed(fails);
            return;
        }
        try {
            told.addAll(request.commands(state));
        } catch (IllegalArgumentException e) {
            reply.refused(String.valueOf(e.getMessage()));
            return;
        }
        reply.done();
    }

    /** Something that is waited for whenever a page is told the whole. */
    public volatile Runnable whileTelling = () -> {};

    @Override
    public boolean live() {
        whileTelling.run();
        return true;
    }

    @Override
    public Path recording(int take) {
        return folder.resolve("take-00" + take + ".wav");
    }

    @Override
    public Path films() {
        return folder.resolve("film");
    }

    @Override
    public DeskHandOff handOff() {
        return handOff;
    }

    @Override
    public void writePickups(OutputStream out) throws IOException {
        out.write("%PDF-1.7".getBytes(StandardCharsets.US_ASCII));
    }
}
