package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Pickups;

/** Finds faults that editing introduced in the words. Before this, the film's sound is followed like a take. */
public final class WordsCheck {
    private static final String KIND = "words";

    private final SessionState state;
    private final List<Finding> findings = new ArrayList<>();

    private final Set<Integer> leftOut;

    private WordsCheck(SessionState state, Set<Integer> leftOut) {
        this.state = state;
        this.leftOut = leftOut;
    }

    /** The words were not checked, as the script that was found cannot be read. */
    public static Finding notChecked(ProblemException why) {
        return Finding.ofAll(
                Grade.LOOK,
                KIND,
                "the words were not checked; " + why.where() + ": " + why.what(),
                why.remedy() + ", or name the script");
    }

    /**
     * What was found, in order of time.
     *
     * @param leftOut lines that the film does without on purpose, so that they are not missing
     */
    public static List<Finding> of(SessionState state, Set<Integer> leftOut) {
        WordsCheck check = new WordsCheck(state, leftOut);
        if (state.lines().all().stream().allMatch(notes -> notes.attempts().isEmpty())) {
            return List.of(Finding.ofAll(
                    Grade.MEND,
                    KIND,
                    "no line of the script was heard",
                    "check that the film and the script belong together"));
        }
        state.lines().all().forEach(check::line);
        check.order();
        state.lines().asides().forEach(check::aside);
        check.findings.sort(
                Comparator.comparing(f -> f.place().map(Finding.Place::start).orElse(StreamTime.ZERO)));
        return check.findings;
    }

    private void line(LineNotes notes) {
        if (notes.attempts().isEmpty() && leftOut.contains(notes.line())) {
            return;
        }
        if (notes.attempts().isEmpty()) {
            StreamTime gap = gap(notes.line());
            add(
                    gap,
                    gap,
                    Grade.MEND,
                    "line " + quoted(notes) + " is missing",
                    "put it back in the edit, or pick it up");
            return;
        }
        List<Attempt> whole =
                notes.attempts().stream().filter(Attempt::complete).toList();
        for (Attempt attempt : notes.attempts()) {
            boolean kept = notes.telling().filter(attempt::equals).isPresent();
            if (attempt.complete() && !kept) {
                add(
                        attempt,
                        "line " + quoted(notes) + " is there " + whole.size() + " times; this is one of them",
                        "cut " + "one of them out");
            } else if (!attempt.complete() && !kept) {
                add(attempt, "a false start of line " + quoted(notes) + " was left in", "cut it out");
            }
        }
        String said = Pickups.of(state, notes).said();
        Attempt told = notes.telling().orElseThrow();
        if (notes.outcome() == Outcome.INCOMPLETE) {
            add(told, "line " + quoted(notes) + " is " + said, "put its end back, or pick the line up");
        } else if (notes.outcome() == Outcome.MISREAD) {
            String what = "line " + quoted(notes) + ": " + said;
            add(told.start(), told.end(), Grade.LOOK, what, "listen whether it may stay so");
        }
    }

    /** Lines that come in a different order than in the script. */
    private void order() {
        Optional<Attempt> furthest = Optional.empty();
        for (LineNotes notes : state.lines().all()) {
            Optional<Attempt> best = notes.best();
            if (best.isEmpty()) {
                continue;
            }
            if (furthest.isPresent()
                    && best.get().start().isBefore(furthest.get().start())) {
                add(
                        best.get(),
                        "line " + quoted(notes) + " comes before line "
                                + furthest.get().line(),
                        "move it to its place");
            } else {
                furthest = best;
            }
        }
    }

    private void aside(Aside aside) {
        String said = aside.said().isEmpty() ? "" : ": \u201c" + aside.said() + "\u201d";
        add(
                aside.start(),
                aside.end(),
                Grade.LOOK,
                "speech that is not in the script" + said,
                "listen whether it is meant; cut it out if not");
    }

    /** Where a missing line belongs: after the line heard before it. */
    private StreamTime gap(int line) {
        for (int before = line - 1; before >= 1; before--) {
            Optional<Attempt> best = state.lines().notes(before).telling();
            if (best.isPresent()) {
                return best.get().end();
            }
        }
        return StreamTime.ZERO;
    }

    private String quoted(LineNotes notes) {
        return notes.line() + " (\u201c" + Pickups.of(state, notes).firstWords() + "\u201d)";
    }

    private void add(Attempt attempt, String what, String remedy) {
        add(attempt.start(), attempt.end(), Grade.MEND, what, remedy);
    }

    private void add(StreamTime start, StreamTime end, Grade grade, String what, String remedy) {
        findings.add(Finding.at(start, end, grade, KIND, what, remedy));
    }
}
