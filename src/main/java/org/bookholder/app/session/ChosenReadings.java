package org.bookholder.app.session;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.bookholder.course.Text;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/**
 * From which of its sessions each line of a lesson is taken: the last in which it was read clean, or else the last in which it
 * was read to its end. Of equally good readings, one that a camera shows goes first.
 *
 * @param sessions the number of the session of each line, from 0; where there is nothing to use in any, the last that tried
 *     it, or else that has it
 * @param passedOver lines that were read just as well in a later session, with which no camera's file was matched
 */
public record ChosenReadings(Map<Integer, Integer> sessions, List<Integer> passedOver) {
    /** How well a session has a line: tried, read to its end or clean. A camera that shows it counts less than such a step. */
    private static final int TRIED = 1;

    private static final int WHOLE = 2;

    private static final int CLEAN = 4;
    private static final int FILMED = 1;

    /** Copies the map and the list. */
    public ChosenReadings {
        sessions = Map.copyOf(sessions);
        passedOver = List.copyOf(passedOver);
    }

    /**
     * A session of the lesson.
     *
     * @param state what became of it
     * @param numbers from its line numbers to the lesson's
     * @param filmed whether a camera's file was matched with it
     * @param hidden whether an attempt is not seen although one was, as that file cannot be used now
     */
    public record Reading(
            SessionState state, Map<Integer, Integer> numbers, boolean filmed, Predicate<Attempt> hidden) {
        /** One whose files are all there. */
        public Reading(SessionState state, Map<Integer, Integer> numbers, boolean filmed) {
            this(state, numbers, filmed, attempt -> false);
        }

        /** The attempt of a line that is used, if there is one. */
        public Optional<Attempt> chosen(LineNotes notes, CutRules rules) {
            return CutPlanner.chosen(notes, rules, hidden);
        }

        /** What somebody chose stays, seen or not. */
        private boolean filmed(LineNotes notes, Attempt use) {
            return filmed && (notes.kept() || !hidden.test(use));
        }
    }

    /**
     * Chooses.
     *
     * @param readings the lesson's sessions, the oldest first
     */
    public static ChosenReadings of(List<Reading> readings, CutRules rules) {
        Map<Integer, Integer> chosen = new HashMap<>();
        Map<Integer, Integer> merits = new HashMap<>();
        Set<Integer> passedOver = new TreeSet<>();
        for (int i = 0; i < readings.size(); i++) {
            Reading reading = readings.get(i);
            for (LineNotes notes : reading.state().lines().all()) {
                Integer line = reading.numbers().get(notes.line());
                if (line == null) {
                    continue;
                }
                int merit = merit(notes, reading, rules);
                int best = merits.getOrDefault(line, 0);
                if (merit >= best) {
                    merits.put(line, merit);
                    chosen.put(line, i);
                    passedOver.remove(line);
                } else if (merit + FILMED == best && merit >= WHOLE && !reading.filmed()) {
                    passedOver.add(line);
                }
            }
        }
        return new ChosenReadings(chosen, List.copyOf(passedOver));
    }

    /**
     * A clean reading goes before one that is not, or that somebody wants recorded again, filmed or not: the camera's file may still be
     * matched.
     */
    private static int merit(LineNotes notes, Reading reading, CutRules rules) {
        Optional<Attempt> use = reading.chosen(notes, rules);
        if (use.isEmpty()) {
            return notes.attempts().isEmpty() ? 0 : TRIED;
        }
        boolean clean = notes.kept() || (use.get().outcome() == Outcome.CLEAN && !notes.pickup());
        return (clean ? CLEAN : WHOLE) + (reading.filmed(notes, use.get()) ? FILMED : 0);
    }

    /** What is to be said of lines that were passed over, one sentence; empty if there are none. */
    public static Optional<String> remark(List<Integer> passedOver) {
        if (passedOver.isEmpty()) {
            return Optional.empty();
        }
        String lines = Text.lines(passedOver);
        return Optional.of(Character.toUpperCase(lines.charAt(0)) + lines.substring(1)
                + (passedOver.size() == 1 ? " was" : " were")
                + " read well again in a later session, but no camera file is matched with that session, so the"
                + " earlier reading is used. Match the camera file if you want the later one.");
    }
}
