package org.bookholder.bench;

import java.util.Comparator;
import java.util.List;
import org.bookholder.bench.Findings.LineFound;
import org.bookholder.bench.Findings.Move;
import org.bookholder.bench.Findings.Time;
import org.bookholder.bench.Truth.LineTruth;
import org.bookholder.bench.Truth.Passage;
import org.bookholder.bench.Truth.SaidAside;
import org.bookholder.follow.model.Outcome;

/** Compares what was found of a reading with what happened in it. {@code docs/accuracy.md} has the definitions. */
final class Scorer {
    /** A best attempt is the right one if both its bounds are within this distance. */
    private static final double SAME_ATTEMPT = 0.5;

    /** From here on in a passage the position must be in its line. */
    private static final double SETTLED = 1.0;

    private static final double SETTLED_AFTER_JUMP = 2.5;

    /** A line not shown this long after its voice has ended was never reached. */
    private static final double TOO_LATE = 2.0;

    private static final double SAMPLED_EVERY = 0.1;

    /** Longest time assumed for a last word and the silence after it. */
    private static final double LAST_WORD = 0.6;

    private final Truth truth;
    private final Findings found;
    private final Score score = new Score();

    private Scorer(Truth truth, Findings found) {
        this.truth = truth;
        this.found = found;
    }

    static Score score(Truth truth, Findings found) {
        Scorer scorer = new Scorer(truth, found);
        scorer.score.seconds = truth.seconds();
        for (LineTruth line : truth.lines()) {
            LineFound lineFound = found.lines().get(line.line() - 1);
            scorer.outcome(line, lineFound.outcome());
            scorer.attempts(line, lineFound);
        }
        scorer.asides();
        if (!found.moves().isEmpty()) {
            scorer.position();
        }
        return scorer.score;
    }

    private void outcome(LineTruth line, Outcome called) {
        boolean lost = lost(line.outcome());
        if (lost) {
            score.lostFound.count(lost(called));
        }
        if (lost(called)) {
            score.lostTrue.count(lost);
        }
        if (line.outcome() == Outcome.CLEAN) {
            score.wronglyCalled.count(called != Outcome.CLEAN);
        }
        line.deviation().ifPresent(kind -> {
            switch (kind) {
                case SWAPPED -> score.swapped.count(called != Outcome.CLEAN);
                case DROPPED -> score.dropped.count(called != Outcome.CLEAN);
                case ADDED -> score.added.count(called != Outcome.CLEAN);
            }
        });
    }

    private static boolean lost(Outcome outcome) {
        return outcome == Outcome.SKIPPED || outcome == Outcome.INCOMPLETE;
    }

    private void attempts(LineTruth line, LineFound lineFound) {
        if (truth.of(line.line()).size() > 1) {
            score.retakes.count(lineFound.attempts() > 1);
        } else {
            score.falseRetakes.count(lineFound.attempts() > 1);
        }
        List<Passage> complete = truth.completeOf(line.line());
        if (line.outcome() != Outcome.CLEAN || complete.isEmpty()) {
            return;
        }
        if (lineFound.best().isEmpty()) {
            score.bestRight.count(false);
            return;
        }
        Time best = lineFound.best().get(0);
        Passage nearest = complete.stream()
                .min(Comparator.comparingDouble(p -> Math.abs(p.start() - best.start())))
                .orElseThrow();
        double startError = Math.abs(nearest.start() - best.start());
        double endError = Math.abs(nearest.end() - best.end());
        score.bounds.add(startError);
        score.bounds.add(endError);
        score.bestRight.count(nearest.equals(complete.get(complete.size() - 1))
                && startError < SAME_ATTEMPT
                && endError < SAME_ATTEMPT);
    }

    private void asides() {
        for (SaidAside said : truth.asides()) {
            double half = (said.end() - said.start()) / 2;
            score.asides.count(found.asides().stream().anyMatch(a -> overlap(said, a) > half));
        }
        score.falseAsides += (int) found.asides().stream()
                .filter(a -> truth.asides().stream().noneMatch(said -> overlap(said, a) > 0))
                .count();
    }

    private static double overlap(SaidAside said, Time aside) {
        return Math.min(said.end(), aside.end()) - Math.max(said.start(), aside.start());
    }

    private void position() {
        int before = 0;
        for (Passage passage : truth.passages()) {
            boolean jumped = passage.line() != before + 1;
            double reached = found.firstShown(passage.line(), passage.start(), passage.end() + TOO_LATE);
            score.neverReached.count(Double.isInfinite(reached));
            double late = Math.min(reached, passage.end() + TOO_LATE) - passage.start();
            (jumped ? score.jump : score.next).add(late);
            double from = passage.start() + (jumped ? SETTLED_AFTER_JUMP : SETTLED);
            for (double at = from; at < passage.end(); at += SAMPLED_EVERY) {
                Move shown = found.shownAt(at);
                boolean right = shown.line() == passage.line();
                boolean justDone =
                        shown.line() == passage.line() + 1 && shown.word() == 1 && passage.end() - at < LAST_WORD;
                score.onLine.count(right);
                score.onLineOrNext.count(right || justDone);
            }
            before = passage.line();
        }
        for (SaidAside said : truth.asides()) {
            score.carriedOff.count(Math.abs(found.lineAt(said.end()) - said.afterLine()) > 1);
        }
    }
}
