package org.bookholder.app.review;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import org.bookholder.app.desk.SessionDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.AcceptedReadingsStage;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.HeardAsKeeper;
import org.bookholder.app.session.Overflows;
import org.bookholder.app.session.SecondPlace;
import org.bookholder.desk.ServedSession;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Review;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.ReplayedSession;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.script.model.Script;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/** A stored session under review. Nobody else can open it for writing meanwhile. */
public final class ReviewSession implements AutoCloseable {
    private static final String LOOK_ONLY =
            "This session's folder cannot be written, or has no room for all of the session. You can look at it, but"
                    + " nothing is changed.";

    private final Environment here;
    private final SessionFolder folder;
    private final SecondPlace second;
    private final Review review;
    private final Workers workers;
    private final SessionDesk desk;

    private ReviewSession(
            Environment here,
            SessionFolder folder,
            SecondPlace second,
            Review review,
            Workers workers,
            SessionDesk desk) {
        this.here = here;
        this.folder = folder;
        this.second = second;
        this.review = review;
        this.workers = workers;
        this.desk = desk;
    }

    /** Opens the session in a folder; where nothing can be written, only to look at it. */
    public static ReviewSession of(Environment here, Path place) throws ProblemException {
        // What would be added now could not be put in order with what is still kept in a second place.
        boolean writable = Files.isWritable(place) && Overflows.of(here, place).isEmpty();
        SessionFolder folder = writable ? SessionFolder.open(place, here.locks()) : SessionFolder.openForReading(place);
        try {
            List<SessionEvent> events = folder.events();
            folder.damage().ifPresent(here.warnings()::of);
            SessionEvent.Opened opened = Replay.firstOpened(events)
                    .orElseThrow(() -> new ProblemException(
                            "nothing was read in this session yet", place.toString(), "name another session"));
            Script script = opened.script();
            ReplayedSession past = ReplayedSession.of(script, BreakLimits.of(here), events);
            SecondPlace second = new SecondPlace(here, folder);
            Review review = new Review(
                    folder.journal(), second, past.state(), here.nanoTime(), FaultLog.in(folder.path(), here.clock()));
            Workers workers = new Workers(here.nanoTime(), review);
            review.begin(workers);
            if (writable) {
                HeardAsKeeper keeper = new HeardAsKeeper(here, folder.path());
                workers.takeOn(new AcceptedReadingsStage(folder.path(), keeper, review.state()));
            }
            BiConsumer<Request, Request.Reply> ask =
                    writable ? review::ask : (request, reply) -> reply.failed(LOOK_ONLY);
            SessionDesk desk = SessionDesk.of(here, folder, past.trail(), review.state(), ask, review, false);
            return new ReviewSession(here, folder, second, review, workers, desk);
        } catch (ProblemException e) {
            folder.close();
            throw e;
        }
    }

    public ServedSession place() {
        return desk.place();
    }

    public Supplier<SessionState> state() {
        return review.state();
    }

    /** Carries out pending requests first. */
    @Override
    public void close() {
        desk.close();
        workers.close();
        if (review.leftBehind()) {
            folder.leaveOpen();
        } else {
            keepElsewhere();
        }
        folder.close();
    }

    private void keepElsewhere() {
        int kept = review.keepElsewhere();
        if (!second.takeIn() && kept > 0) {
            here.warnings()
                    .of(new ProblemException(
                            kept + (kept == 1 ? " note is" : " notes are") + " kept in " + second.place()
                                    + ", because the session cannot be written",
                            folder.path().toString(),
                            "make room there; the next command that opens the session takes them in"));
        }
    }
}
