package org.bookholder.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.course.CourseSessions;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonKind;
import org.bookholder.course.Measured;
import org.bookholder.course.prepare.LessonTime;
import org.bookholder.course.prepare.TimeText;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.speech.Ears;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tells how long lessons will run, and what in them is hard to say. */
@Command(
        name = "time",
        sortOptions = false,
        description = {
            "Show how long a lesson or a course will run, at its target pace and at your own, and which stretches",
            "are hard to say."
        })
final class TimeCommand implements Callable<Integer> {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SCRIPT|FOLDER", description = "A lesson's script, or a course's folder.")
    private @Nullable Path place;

    @Option(names = "--json", description = "The same as JSON, for other programs.")
    private boolean json;

    TimeCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException, JsonProcessingException {
        Path given = Objects.requireNonNull(place);
        boolean folder = Files.isDirectory(given);
        Optional<Course> course = folder ? Optional.of(CourseReader.read(given)) : Optional.empty();
        List<Lesson> lessons = course.isPresent()
                ? course.get().lessons()
                : List.of(new Lesson(1, given, ScriptReader.read(given), LessonKind.PRESENTER));
        Path sessions = (folder ? given : given.resolveSibling("")).resolve("sessions");
        CourseSessions found = CourseSessions.of(lessons, sessions, here);
        terminal.leftOut(found.unreadable());
        Measured measured = Measured.of(
                found.byLesson().values().stream().flatMap(List::stream).toList());
        try (KnownWords known = KnownWords.of(here)) {
            List<LessonTime> times = new ArrayList<>();
            for (Lesson lesson : lessons) {
                times.add(LessonTime.of(
                        String.valueOf(lesson.file().getFileName()),
                        lesson.script(),
                        measured.pace(),
                        known.vocabulary()));
            }
            if (json) {
                terminal.out().println(MAPPER.writeValueAsString(times));
            } else {
                TimeText.of(
                                course.map(Course::title),
                                times,
                                measured,
                                known.vocabulary().isPresent())
                        .forEach(terminal.out()::println);
            }
        }
        return 0;
    }

    /** The words that the recogniser knows, if there is one on this machine. */
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
