package org.bookholder.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Outcome;
import org.bookholder.pace.TakeTime;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;
import org.pcollections.HashTreePMap;
import org.pcollections.HashTreePSet;
import org.pcollections.PMap;
import org.pcollections.TreePVector;

/**
 * The sessions of a lesson as one: their takes are counted on, their times follow each other, and their lines have the lesson's
 * numbers. Of each line all attempts are kept; the one to use is that of the session that was chosen for it.
 *
 * @param state what a session would be in which all of it was read; it holds what is handed off, not what views need
 * @param parts the sessions, the oldest first
 */
public record JoinedSessions(SessionState state, List<JoinedPart> parts) {
    /** Copies the list. */
    public JoinedSessions {
        parts = List.copyOf(parts);
    }

    /**
     * Joins sessions.
     *
     * @param lesson the lesson
     * @param sessions its sessions, the oldest first, at least one
     * @param numbers for each session, from its line numbers to the lesson's
     * @param chosen the number of the session of each line, from 0; lines that no session has are not in it
     */
    public static JoinedSessions of(
            Script lesson,
            List<SessionState> sessions,
            List<Map<Integer, Integer>> numbers,
            Map<Integer, Integer> chosen) {
        List<JoinedPart> parts = new ArrayList<>();
        int takes = 0;
        StreamTime before = StreamTime.ZERO;
        for (int i = 0; i < sessions.size(); i++) {
            SessionState state = sessions.get(i);
            parts.add(new JoinedPart(state, numbers.get(i), takes, before));
            takes += state.takes().count();
            before = before.plus(JoinedPart.wholeSeconds(state));
        }
        return new JoinedSessions(new Joining(lesson, parts, chosen).state(), parts);
    }

    /** Puts the parts together. */
    private record Joining(Script lesson, List<JoinedPart> parts, Map<Integer, Integer> chosen) {
        SessionState state() {
            SessionState blank = Session.begin(lesson, FatigueLimits.defaults());
            List<Take> takes = new ArrayList<>();
            List<TakeTime.Span> holds = new ArrayList<>();
            List<Aside> asides = new ArrayList<>();
            List<Note> notes = new ArrayList<>();
            List<UnsavedStretch> lost = new ArrayList<>();
            for (JoinedPart part : parts) {
                takes.addAll(part.takes());
                holds.addAll(part.holds());
                asides.addAll(part.asides());
                notes.addAll(part.notes());
                lost.addAll(part.notSaved());
            }
            Sound silent = blank.measures().sound();
            Takes all = new Takes(
                    TreePVector.from(takes),
                    false,
                    !takes.isEmpty(),
                    Optional.empty(),
                    Optional.empty(),
                    TreePVector.from(holds),
                    Optional.empty());
            return new SessionState(
                    lesson,
                    parts.get(parts.size() - 1).end(),
                    all,
                    blank.following(),
                    new Lines(TreePVector.from(lines()), TreePVector.from(asides)),
                    new Measures(
                            blank.measures().pace(),
                            blank.measures().fatigue(),
                            new Sound(silent.rms(), silent.peak(), silent.clipped(), silent.lost(), lost)),
                    Troubles.NONE,
                    new Remarks(TreePVector.from(notes), Optional.empty(), Optional.empty(), film(), Acts.NONE),
                    PickupRound.NONE,
                    Optional.empty(),
                    blank.sums());
        }

        private List<LineNotes> lines() {
            List<Map<Integer, LineNotes>> read =
                    parts.stream().map(JoinedPart::lines).toList();
            int last = read.stream()
                    .flatMap(lines -> lines.values().stream())
                    .filter(LineNotes::reached)
                    .mapToInt(LineNotes::line)
                    .max()
                    .orElse(0);
            return lesson.lines().stream()
                    .map(ScriptLine::number)
                    .map(line -> line(line, read, line < last))
                    .toList();
        }

        /** @param passed whether a later line was reached: one that no session has yet is to be read, then, and not still ahead */
        private LineNotes line(int line, List<Map<Integer, LineNotes>> read, boolean passed) {
            List<LineNotes> all = read.stream()
                    .flatMap(lines -> Optional.ofNullable(lines.get(line)).stream())
                    .toList();
            if (all.isEmpty()) {
                return LineNotes.unread(line).reached(passed);
            }
            int use = chosen.getOrDefault(line, parts.size() - 1);
            LineNotes own = Optional.ofNullable(read.get(use).get(line)).orElse(LineNotes.unread(line));
            // Where nothing was tried, what counts is what a session that came to the line says of it.
            Outcome outcome = own.reached()
                    ? own.outcome()
                    : all.stream()
                            .filter(LineNotes::reached)
                            .map(LineNotes::outcome)
                            .reduce((a, b) -> b)
                            .orElse(own.outcome());
            return new LineNotes(
                    line,
                    outcome,
                    all.stream().anyMatch(LineNotes::reached),
                    all.stream().flatMap(notes -> notes.attempts().stream()).toList(),
                    own.best(),
                    all.stream().flatMap(notes -> notes.marks().stream()).toList(),
                    all.stream().flatMap(notes -> notes.lastMark().stream()).reduce(StreamTime::max),
                    decision(own, all));
        }

        /**
         * What was decided about a line: in the session that it is taken from, unless somebody wanted it left out or recorded again
         * later.
         */
        private static Optional<Decision> decision(LineNotes own, List<LineNotes> all) {
            Optional<Decision> last =
                    all.stream().flatMap(notes -> notes.decision().stream()).reduce((a, b) -> b);
            boolean counts = last.filter(made ->
                            made.choice() == Decision.Choice.LEAVE_OUT || made.choice() == Decision.Choice.RECORD_AGAIN)
                    .isPresent();
            return counts ? last : own.decision().filter(made -> made.choice() != Decision.Choice.LEAVE_OUT);
        }

        /** How lines are cut and framed, as was decided in the sessions that they are taken from. */
        private ReviewOverrides film() {
            Map<Integer, FilmChoices> all = new HashMap<>();
            for (int i = 0; i < parts.size(); i++) {
                int session = i;
                parts.get(i).film().forEach((line, choices) -> {
                    if (chosen.getOrDefault(line, -1) == session) {
                        all.put(line, choices);
                    }
                });
            }
            PMap<Integer, FilmChoices> film = HashTreePMap.from(all);
            return new ReviewOverrides(HashTreePMap.empty(), HashTreePMap.empty(), HashTreePSet.empty(), film);
        }
    }
}
