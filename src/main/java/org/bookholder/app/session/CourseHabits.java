package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFile;
import org.bookholder.course.CourseReader;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.journal.SaidNotes;
import org.bookholder.journal.SaidNotes.Said;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.SpokenHabit;
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * How the author of a course says numbers, units and the like: what was heard in the course's sessions, which each keep it in their folder,
 * and what was chosen, which stands in {@code course.yaml} below {@code say:}.
 */
public final class CourseHabits {
    private final Environment here;

    /** The habits in the sessions and courses that are found from {@code here}. */
    public CourseHabits(Environment here) {
        this.here = here;
    }

    /**
     * What was heard of a course.
     *
     * @param session the session's folder
     * @param said what was said, and where in it
     */
    public record Heard(Path session, Said said) {}

    /**
     * How something is said in a course.
     *
     * @param written the script's word, without the punctuation around it, in lower case
     * @param said how it is said
     * @param chosen whether somebody chose it for the course; otherwise it was heard
     * @param times how often it was said so
     * @param last where it was last said so; empty if it never was
     */
    public record Saying(String written, String said, boolean chosen, int times, Optional<Heard> last) {}

    /**
     * All that is known of a course.
     *
     * @param habits what of it is a habit
     * @param sayings for each written word the form that was chosen or, if none was, each form that was heard; chosen ones first, then those
     *     that were said most often
     */
    public record Known(SpokenHabits habits, List<Saying> sayings) {
        /** Nothing. */
        public static final Known NOTHING = new Known(SpokenHabits.NONE, List.of());

        /** Copies the list. */
        public Known {
            sayings = List.copyOf(sayings);
        }
    }

    /** The folder of the course that a script belongs to: the one with its {@code course.yaml}, or else the script's own. */
    public static Path courseOf(Path script) {
        Path file = script.toAbsolutePath().normalize();
        return CourseReader.around(file).orElseGet(() -> file.resolveSibling(""));
    }

    /** The habits of a script's author; none if they can't be read, which is warned of. */
    public SpokenHabits of(Path script) {
        return known(script).habits();
    }

    /** The same with how often and where things were said. */
    public Known known(Path script) {
        try {
            Map<String, String> chosen = CourseReader.sayings(courseOf(script));
            List<Heard> heard = heard(script);
            return new Known(new SpokenHabits(chosen, counted(heard)), sayings(chosen, heard));
        } catch (ProblemException e) {
            here.warnings().of(e);
            return Known.NOTHING;
        }
    }

    private static List<Saying> sayings(Map<String, String> chosen, List<Heard> heard) {
        Map<List<String>, Saying> all = new LinkedHashMap<>();
        chosen.forEach((written, said) ->
                all.put(List.of(written, said), new Saying(written, said, true, 0, Optional.empty())));
        for (Heard one : heard) {
            String written = one.said().written();
            String said = one.said().said();
            if (said.equals(chosen.getOrDefault(written, said))) {
                all.merge(
                        List.of(written, said),
                        new Saying(written, said, false, 1, Optional.of(one)),
                        (before, now) ->
                                new Saying(written, said, before.chosen(), before.times() + 1, Optional.of(one)));
            }
        }
        return all.values().stream()
                .sorted(Comparator.comparing(Saying::chosen)
                        .reversed()
                        .thenComparing(Comparator.comparingInt(Saying::times).reversed()))
                .toList();
    }

    /** All that was heard in the sessions of a script's course, those of a session in the order of its script. */
    private List<Heard> heard(Path script) throws ProblemException {
        Path course = courseOf(script);
        Path own = course.resolve(Course.SESSIONS);
        List<Heard> heard = new ArrayList<>();
        for (Path session : SessionFolders.folders(List.of(own, here.sessions()))) {
            Optional<SaidNotes> notes = SaidNotes.of(session)
                    .filter(kept -> session.startsWith(own) || kept.course().equals(course.toString()));
            notes.ifPresent(kept -> kept.said().forEach(said -> heard.add(new Heard(session, said))));
        }
        return heard;
    }

    private static List<SpokenHabit> counted(List<Heard> heard) {
        Map<SpokenHabit, Integer> times = new LinkedHashMap<>();
        for (Heard one : heard) {
            Said said = one.said();
            times.merge(new SpokenHabit(said.written(), said.usual(), said.said(), 0), 1, Integer::sum);
        }
        return times.entrySet().stream()
                .map(one -> one.getKey().said(one.getValue()))
                .toList();
    }

    /**
     * Chooses for a script's course how something is said.
     *
     * @param written the script's word, as it is written
     * @param form how it is said, in words; empty to take the choice back
     * @throws ProblemException if this can't be said, or the course's file can't be written; nothing has changed then
     */
    public void choose(Path script, String written, String form) throws ProblemException {
        new CourseFile(courseOf(script)).say(written, form);
    }

    /**
     * Keeps in a session's folder how things were said in it.
     *
     * @throws ProblemException if that can't be written
     */
    public static void keep(Path session, SessionState state) throws ProblemException {
        Path script = Path.of(state.script().source());
        SaidNotes notes = new SaidNotes(courseOf(script).toString(), said(state));
        boolean news =
                !SaidNotes.of(session).map(SaidNotes::said).orElse(List.of()).equals(notes.said());
        if (news) {
            notes.keep(session);
        }
    }

    /** What was said in the best attempt of each line where the script leaves a choice. */
    private static List<Said> said(SessionState state) {
        List<ScriptLine> lines = state.script().lines();
        List<Said> all = new ArrayList<>();
        for (LineNotes notes : state.lines().all()) {
            Optional<Attempt> best = notes.best();
            Optional<Take> take = best.flatMap(attempt -> state.takes().number(attempt.take()));
            if (best.isPresent() && take.isPresent()) {
                for (WordTime time : best.get().words()) {
                    List<ScriptWord> words = lines.get(notes.line() - 1).words();
                    if (!time.said().isEmpty() && time.word() <= words.size()) {
                        all.add(said(words.get(time.word() - 1), time, notes.line(), take.get()));
                    }
                }
            }
        }
        return all;
    }

    private static Said said(ScriptWord word, WordTime time, int line, Take take) {
        return new Said(
                SpokenHabits.key(word),
                String.join(" ", word.spoken().get(0)),
                time.said(),
                line,
                take.number(),
                seconds(time.start(), take),
                seconds(time.end(), take));
    }

    private static double seconds(StreamTime at, Take take) {
        return Math.round(at.since(take.start()).seconds() * 1000) / 1000.0;
    }
}
