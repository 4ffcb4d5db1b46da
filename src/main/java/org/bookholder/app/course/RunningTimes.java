package org.bookholder.app.course;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonKind;
import org.bookholder.course.Measured;
import org.bookholder.course.prepare.LessonTime;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.Ears;

/**
 * Expected running times of lessons, and words in them that are hard to say.
 *
 * @param course the course's title; empty for a single lesson
 * @param lessons each lesson's times, in order
 * @param measured the pace of earlier sessions
 * @param wordsChecked whether a recogniser was available to find words it does not know
 * @param unreadable the reasons why lessons and earlier sessions could not be read, one line each
 */
public record RunningTimes(
        Optional<String> course,
        List<LessonTime> lessons,
        Measured measured,
        boolean wordsChecked,
        List<String> unreadable) {
    /**
     * Estimates the times of a lesson or of all lessons of a course.
     *
     * @param place a script, or a course's folder
     */
    public static RunningTimes of(Path place, Environment here) throws ProblemException {
        return of(place, List.of(), new TargetPaces(here, DayService.SOLE_PRESENTER), here);
    }

    /**
     * The same with the lines of some speakers only.
     *
     * @param speakers those whose lines are read; empty if the scripts' own settings count
     * @param paces the paces at which the lessons are to be read
     */
    public static RunningTimes of(Path place, List<String> speakers, TargetPaces paces, Environment here)
            throws ProblemException {
        boolean folder = Files.isDirectory(place);
        Optional<Course> course = folder ? Optional.of(paces.aimed(CourseReader.readable(place))) : Optional.empty();
        List<String> silent = new ArrayList<>();
        List<Lesson> lessons = course.isPresent()
                ? spoken(course.get().lessons(), speakers, paces, silent)
                : List.of(new Lesson(
                        1, place, paces.aimed(ScriptFile.read(place, speakers).script(), place), LessonKind.PRESENTER));
        Path sessions = (folder ? place : place.resolveSibling("")).resolve("sessions");
        CourseSessions found = CourseSessions.of(lessons, sessions, here);
        Measured measured = Measured.of(
                found.byLesson().values().stream().flatMap(List::stream).toList());
        try (KnownWords known = KnownWords.of(here)) {
            List<LessonTime> times = new ArrayList<>();
            for (Lesson lesson : lessons) {
                times.add(LessonTime.of(
                        lesson.number(),
                        String.valueOf(lesson.file().getFileName()),
                        lesson.script(),
                        measured.pace(),
                        known.vocabulary()));
            }
            return new RunningTimes(
                    course.map(Course::title),
                    times,
                    measured,
                    known.vocabulary().isPresent(),
                    Stream.of(course.map(Course::why).orElse(List.of()), silent, found.unreadable())
                            .flatMap(List::stream)
                            .toList());
        }
    }

    /** The lessons with these people's lines only; lessons in which they don't speak are named in {@code silent}. */
    private static List<Lesson> spoken(
            List<Lesson> lessons, List<String> speakers, TargetPaces paces, List<String> silent) {
        if (speakers.isEmpty()) {
            return lessons;
        }
        List<Lesson> spoken = new ArrayList<>();
        for (Lesson lesson : lessons) {
            try {
                Script script = ScriptFile.read(lesson.file(), speakers).script();
                spoken.add(lesson.with(paces.aimed(script, lesson.file())));
            } catch (ProblemException e) {
                silent.add(String.valueOf(e.getMessage()));
            }
        }
        return spoken;
    }

    /** The recogniser's vocabulary, if there is a recogniser on this machine. */
    private record KnownWords(Optional<Ears> ears) implements AutoCloseable {
        static KnownWords of(Environment here) {
            try {
                return new KnownWords(Optional.of(here.equipment().ears(here.model())));
            } catch (ProblemException noRecogniser) {
                return new KnownWords(Optional.empty());
            }
        }

        Optional<Vocabulary> vocabulary() {
            return ears.map(Ears::vocabulary);
        }

        @Override
        public void close() {
            ears.ifPresent(Ears::close);
        }
    }
}
