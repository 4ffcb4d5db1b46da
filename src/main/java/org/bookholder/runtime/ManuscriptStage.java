package org.bookholder.runtime;

import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.Manuscript;
import org.bookholder.runtime.source.Revision;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.take.Report;

/**
 * Checks regularly whether a new text was saved, and reports it once it is the same in two checks, because an editor
 * may still be writing. Also saves the text being read beside the session, because the session itself must not wait for
 * a disk.
 */
final class ManuscriptStage implements Stage {
    private static final long LOOK_NANOS = 400_000_000L;

    private final Manuscript manuscript;
    private final Mailbox<Report> reports;
    private final LongSupplier nanoTime;
    private final BooleanSupplier over;
    private final Mailbox<String> toKeep = new Mailbox<>(16);
    private String seen;
    private boolean reported = true;
    private long last;

    /**
     * Creates the stage.
     *
     * @param text the text that is being read
     * @param over whether the session is over
     */
    ManuscriptStage(
            Manuscript manuscript, String text, Mailbox<Report> reports, LongSupplier nanoTime, BooleanSupplier over) {
        this.manuscript = manuscript;
        this.seen = text;
        this.reports = reports;
        this.nanoTime = nanoTime;
        this.over = over;
        this.last = nanoTime.getAsLong();
    }

    @Override
    public String role() {
        return "manuscript";
    }

    @Override
    public Criticality criticality() {
        return Criticality.OPTIONAL;
    }

    @Override
    public int doWork() {
        String text = toKeep.poll();
        if (text != null) {
            keep(text);
            return 1;
        }
        if (over.getAsBoolean()) {
            return -1;
        }
        if (nanoTime.getAsLong() - last < LOOK_NANOS) {
            return 0;
        }
        last = nanoTime.getAsLong();
        look();
        return 1;
    }

    /** Asks for a text to be saved beside the session; returns at once. May be called from another thread. */
    void keepSoon(String text) {
        toKeep.add(text);
    }

    private void keep(String text) {
        try {
            manuscript.keep(text);
        } catch (ProblemException e) {
            String problem = e.getMessage();
            reports.add(session -> session.textNotKept(problem));
        }
    }

    private void look() {
        String text;
        try {
            text = manuscript.text();
        } catch (ProblemException away) {
            // While an editor saves, the file may be missing for a moment; the next check will find it.
            return;
        }
        if (!text.equals(seen)) {
            seen = text;
            reported = false;
        } else if (!reported) {
            reported = true;
            report(text);
        }
    }

    private void report(String text) {
        try {
            Revision revision = new Revision(manuscript.prepare(text), text);
            reports.add(session -> session.textSaved(revision));
        } catch (ProblemException e) {
            String problem = e.getMessage();
            reports.add(session -> session.textUnusable(problem));
        }
    }
}
