package org.bookholder.app.film;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.ChosenReadings;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.StoredSession;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutItem;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.Gap;
import org.bookholder.film.plan.FilmPlanner.Piece;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Pickups;
import org.bookholder.wording.UnheardTime;
import org.jspecify.annotations.Nullable;

/**
 * The cut of a lesson over all its sessions, each line from the one that {@link ChosenReadings} names.
 *
 * @param pieces clips and gaps in the lesson's order, with the lesson's own line numbers
 * @param marked lines that are used though they were not read clean
 * @param passedOver lines that were read just as well in a later session, with which no camera's file was matched
 * @param instead lines of which another reading is used, as no camera's file shows the better one any more
 */
record LessonCut(List<Piece> pieces, List<Mark> marked, List<Integer> passedOver, List<ReplacedReading> instead) {
    /** At 130 words a minute, between a slow and a quick reader (common practice). */
    private static final double SECONDS_A_WORD = 60 / 130.0;

    private static final int NOWHERE = -1;

    /**
     * A line that is used though it was not read clean, or may not have been.
     *
     * @param line its number in the lesson
     * @param why what was heard, or why someone marked it
     */
    record Mark(int line, String why) {
        String sentence() {
            return "Listen to line " + line + ": " + why;
        }
    }

    LessonCut {
        pieces = List.copyOf(pieces);
        marked = List.copyOf(marked);
        passedOver = List.copyOf(passedOver);
        instead = List.copyOf(instead);
    }

    /** How long the film will be, about. */
    StreamTime length() {
        return pieces.stream().map(piece -> piece.item().length()).reduce(StreamTime.ZERO, StreamTime::plus);
    }

    /**
     * Cuts a lesson.
     *
     * @param script the lesson; a session's lines count as its lines where they have the same text
     * @param sessions its sessions, the oldest first, at least one
     * @param found what recorded each
     * @param leaveOut lines that are to leave no trace
     */
    static LessonCut of(
            Script script,
            List<StoredSession> sessions,
            List<FilmFootage.Found> found,
            CutRules rules,
            Set<Integer> leaveOut,
            Interruption stop)
            throws ProblemException {
        List<Map<Integer, Integer>> numbers = sessions.stream()
                .map(kept -> LessonLines.numbers(kept.state().script(), script))
                .toList();
        List<ChosenReadings.Reading> readings = readings(sessions, numbers, found);
        ChosenReadings best = ChosenReadings.of(readings, rules);
        List<ReplacedReading> instead = ReplacedReading.of(readings, found, best, rules).stream()
                .filter(line -> !leaveOut.contains(line.line()))
                .toList();
        Map<Integer, Integer> chosen = new HashMap<>(best.sessions());
        leaveOut.forEach(line -> chosen.put(line, NOWHERE));
        Map<Integer, Piece> byLine = new HashMap<>();
        List<Mark> marked = new ArrayList<>();
        for (int i = 0; i < sessions.size(); i++) {
            int session = i;
            Map<Integer, Integer> own = numbers.get(i);
            StoredSession kept = sessions.get(i);
            for (CutItem item : CutPlanner.plan(
                            kept.state(),
                            rules,
                            stop.over(kept.sound()),
                            line -> isFrom(session, own.get(line), chosen),
                            found.get(session)::hides)
                    .items()) {
                CutItem there = renumbered(item, own);
                byLine.put(there.firstLine(), new Piece(there, found.get(i).sources(), i));
                item.clip().ifPresent(clip -> marked.addAll(marked(kept, clip, own)));
            }
        }
        int last = sessions.size() - 1;
        for (ScriptLine line : script.lines()) {
            if (!chosen.containsKey(line.number())) {
                byLine.put(
                        line.number(), new Piece(unread(line), found.get(last).sources(), last));
            }
        }
        List<Piece> pieces = script.lines().stream()
                .map(ScriptLine::number)
                .flatMap(line -> Optional.ofNullable(byLine.get(line)).stream())
                .toList();
        return new LessonCut(
                pieces,
                marked,
                best.passedOver().stream()
                        .filter(line -> !leaveOut.contains(line))
                        .filter(line -> instead.stream().noneMatch(other -> other.line() == line))
                        .toList(),
                instead);
    }

    private static List<ChosenReadings.Reading> readings(
            List<StoredSession> sessions, List<Map<Integer, Integer>> numbers, List<FilmFootage.Found> found) {
        List<ChosenReadings.Reading> readings = new ArrayList<>();
        for (int i = 0; i < sessions.size(); i++) {
            FilmFootage.Found files = found.get(i);
            boolean filmed = !files.sources().cameras().isEmpty();
            readings.add(new ChosenReadings.Reading(sessions.get(i).state(), numbers.get(i), filmed, files::hides));
        }
        return readings;
    }

    /** A line that is new since the lesson was read, with about the time that it takes to say. */
    private static Gap unread(ScriptLine line) {
        return new Gap(line.number(), StreamTime.ofSeconds(0.5 + SECONDS_A_WORD * line.spokenWords()), List.of());
    }

    private static boolean isFrom(int session, @Nullable Integer line, Map<Integer, Integer> chosen) {
        return line != null && chosen.getOrDefault(line, NOWHERE) == session;
    }

    private static CutItem renumbered(CutItem item, Map<Integer, Integer> numbers) {
        if (item instanceof Clip clip) {
            return new Clip(
                    clip.take(),
                    clip.in(),
                    clip.out(),
                    clip.quietFrom(),
                    clip.quietTo(),
                    clip.attempts().stream()
                            .map(a -> a.withLine(numbers.getOrDefault(a.line(), a.line())))
                            .toList(),
                    List.of(),
                    clip.framing(),
                    clip.camera());
        }
        return new Gap(numbers.getOrDefault(item.firstLine(), item.firstLine()), item.length(), List.of());
    }

    private static List<Mark> marked(StoredSession kept, Clip clip, Map<Integer, Integer> numbers) {
        return clip.attempts().stream()
                .flatMap(attempt -> toHear(kept.state(), attempt)
                        .map(why -> new Mark(numbers.getOrDefault(attempt.line(), attempt.line()), why))
                        .stream())
                .toList();
    }

    /** Why somebody should listen to a reading before it goes out. */
    private static Optional<String> toHear(SessionState state, Attempt attempt) {
        LineNotes notes = state.lines().notes(attempt.line());
        return notes.pickup()
                ? Optional.of(Pickups.of(state, notes).said())
                : UnheardTime.in(state.line(attempt.line()), notes, attempt);
    }
}
