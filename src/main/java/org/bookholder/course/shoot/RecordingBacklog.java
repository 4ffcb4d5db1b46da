package org.bookholder.course.shoot;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.bookholder.course.Lesson;
import org.bookholder.course.Shooting;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.board.Recording;
import org.bookholder.course.prepare.HardStretches;
import org.bookholder.course.prepare.KnownSounds;

/**
 * What is left to record of a course, and how long that takes in front of the camera.
 *
 * @param works the tasks, in order of the lessons
 * @param ratio recorded time for each finished minute
 * @param ratioFrom where the ratio comes from, for people
 */
public record RecordingBacklog(List<RecordingTask> works, double ratio, String ratioFrom) {
    private static final double SECONDS_PER_MINUTE = 60;

    /** A pickup is read together with the line before it, as a lead-in. */
    private static final int WITH_LEAD_IN = 2;

    /** Copies the list. */
    public RecordingBacklog {
        works = List.copyOf(works);
    }

    /** What is left to record. */
    public static RecordingBacklog of(Board board) {
        OptionalDouble measured = board.measured().ratio();
        boolean written = board.course().shooting().ratio().isPresent();
        double ratio = board.course().shooting().ratio().orElse(measured.orElse(Shooting.USUAL_RATIO));
        String from = written
                ? "from course.yaml"
                : measured.isPresent()
                        ? "measured in this course's sessions"
                        : "common practice for scripts is 1.25 to 2";
        List<RecordingTask> works = new ArrayList<>();
        KnownSounds sounds = new KnownSounds();
        for (LessonState state : board.lessons()) {
            if (!state.recording().complete()) {
                works.add(work(state, ratio, sounds));
            }
        }
        return new RecordingBacklog(works, ratio, from);
    }

    private static RecordingTask work(LessonState state, double ratio, KnownSounds sounds) {
        Lesson lesson = state.lesson();
        Recording recording = state.recording();
        int all = lesson.script().spokenWords();
        int words = words(lesson, recording.unread()) + WITH_LEAD_IN * words(lesson, recording.pickups());
        String what = !recording.begun()
                ? "whole"
                : recording.unread().isEmpty()
                        ? Text.count(recording.pickups().size(), "pickup")
                        : "what is missing of it";
        long minutes = Math.max(1, Math.round(Math.ceil(state.seconds() * words / all * ratio / SECONDS_PER_MINUTE)));
        double hardness = HardStretches.perHundredWords(lesson.script(), sounds);
        return new RecordingTask(
                lesson.number(), lesson.name(), what, Duration.ofMinutes(minutes), hardness, lesson.kind());
    }

    private static int words(Lesson lesson, List<Integer> lines) {
        return lines.stream()
                .mapToInt(n -> lesson.script().lines().get(n - 1).spokenWords())
                .sum();
    }
}
