package org.bookholder.course.offer;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.bookholder.course.Lesson;
import org.bookholder.course.Text;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.board.ModuleState;

/**
 * How far a course is, for a client or partner who is told nothing else: no costs, no names of files or people, and no dates to come.
 *
 * @param title the course's title
 * @param day the day to which it applies
 * @param finished whether all of it is finished
 * @param lessons how many lessons it has, also those that can't be read yet
 * @param minutes how long those of its lessons will run that can be read
 * @param steps how many lessons have come how far
 * @param parts its modules, or the course as one part, each with its lessons
 * @param lastRecorded the day on which something was recorded last, if anything was
 */
public record CourseSummary(
        String title,
        LocalDate day,
        boolean finished,
        int lessons,
        long minutes,
        List<Step> steps,
        List<Part> parts,
        Optional<LocalDate> lastRecorded) {
    /** With more lessons than this they would not fit on one page; then the parts stand for them. */
    private static final int MOST_LESSONS = 30;

    private static final double SECONDS_PER_MINUTE = 60;

    /** Copies the lists. */
    public CourseSummary {
        steps = List.copyOf(steps);
        parts = List.copyOf(parts);
    }

    /**
     * A step of the work.
     *
     * @param name its name: written, recorded, edited, finished
     * @param done how many lessons have done it
     */
    public record Step(String name, int done) {}

    /**
     * A module, or the whole course if it has none.
     *
     * @param heading its heading; may be empty
     * @param lessons how many lessons it has
     * @param ready how many of them are finished
     * @param rows its lessons; none if all of them would not fit on a page
     */
    public record Part(String heading, int lessons, int ready, List<Row> rows) {
        /** Copies the list. */
        public Part {
            rows = List.copyOf(rows);
        }
    }

    /**
     * A lesson.
     *
     * @param number its number
     * @param title its title; "Lesson 7" if it has none, or its script can't be read
     * @param standing how far it is, in a few words
     */
    public record Row(int number, String title, String standing) {}

    /** The summary of a course. */
    public static CourseSummary of(Board board, ZoneId zone) {
        List<LessonState> states = board.lessons();
        int all = states.size() + board.course().unreadable().size();
        boolean fits = all <= MOST_LESSONS;
        List<Part> parts = new ArrayList<>();
        for (ModuleState module : board.modules()) {
            parts.add(new Part(
                    module.heading(), module.all(), (int) module.ready(), fits ? rows(board, module) : List.of()));
        }
        List<Step> steps = List.of(
                new Step("written", states.size()),
                new Step("recorded", board.recorded()),
                new Step("edited", count(states, CourseSummary::edited)),
                new Step("finished and checked", count(states, CourseSummary::ready)));
        return new CourseSummary(
                board.course().title(),
                board.today(),
                board.finished(),
                all,
                Math.max(
                        1,
                        Math.round(states.stream()
                                        .mapToDouble(LessonState::seconds)
                                        .sum()
                                / SECONDS_PER_MINUTE)),
                steps,
                parts,
                board.lastRecorded(zone));
    }

    private static int count(List<LessonState> states, Predicate<LessonState> done) {
        return (int) states.stream().filter(done).count();
    }

    private static boolean edited(LessonState state) {
        return state.recording().complete() && state.edited().isPresent();
    }

    private static boolean ready(LessonState state) {
        return state.missing().isEmpty();
    }

    /** The lessons of a module in order, those that can't be read among them; why they can't is nothing for others. */
    private static List<Row> rows(Board board, ModuleState module) {
        return Stream.concat(
                        module.lessons().stream().map(CourseSummary::row),
                        board.course().unreadable().stream()
                                .filter(lesson -> lesson.module().equals(module.module()))
                                .map(CourseSummary::row))
                .sorted(Comparator.comparingInt(Row::number))
                .toList();
    }

    private static Row row(LessonState state) {
        Lesson lesson = state.lesson();
        return new Row(
                lesson.number(), lesson.isTitled() ? lesson.title() : numbered(lesson.number()), standing(state));
    }

    private static Row row(UnreadableLesson lesson) {
        return new Row(
                lesson.number(),
                numbered(lesson.number()),
                lesson.unwritten() ? lesson.state() : lesson.state() + " yet");
    }

    /** A lesson whose title is not known: the name of its file is nothing for others. */
    private static String numbered(int number) {
        return "Lesson " + number;
    }

    private static String standing(LessonState state) {
        if (ready(state)) {
            return "finished";
        }
        if (!state.recording().begun()) {
            return "written";
        }
        if (!state.recording().complete()) {
            return state.stage().label();
        }
        return edited(state) ? "edited, to be checked" : "recorded";
    }

    /** How far the course is, one sentence. */
    public String sentence() {
        if (finished) {
            return "The course is finished.";
        }
        int ready = steps.get(steps.size() - 1).done();
        int recorded = steps.get(1).done();
        return String.format(
                Locale.ROOT,
                "%d of %s %s finished; %d %s recorded.",
                ready,
                Text.count(lessons, "lesson"),
                ready == 1 ? "is" : "are",
                recorded,
                recorded == 1 ? "is" : "are");
    }

    /** How much it will be, in a few words, and what is not counted in that. */
    public String extent() {
        int unknown = lessons - steps.get(0).done();
        return Text.count(lessons, "lesson") + ", about " + Text.count(minutes, "minute") + " of film"
                + (unknown == 0 ? "" : ", not counting " + Text.count(unknown, "lesson") + " that can't be read yet");
    }

    /** Why no day is promised; empty if all is finished. */
    public String caution() {
        return finished ? "" : "No day of completion is given before every lesson is finished and checked.";
    }
}
