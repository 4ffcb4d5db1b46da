package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Folders;

/**
 * Measures how long the board of a course takes that has been recorded: sixty lessons, each with a session of twenty minutes in
 * which its sixty lines were read three times over.
 *
 * <p>Argument: how many lessons (default 60).
 */
public final class CourseTime {
    private CourseTime() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int lessons = args.length == 0 ? 60 : Integer.parseInt(args[0]);
        Path course = Files.createTempDirectory("bookholder-course");
        try {
            RecordedLessons.write(course, lessons, course.resolve("sessions"), lessons);
            Path out = course.resolve("out.log");
            for (int i = 0; i < 3; i++) {
                Commands.Run run = Commands.run(out, "course", course.toString());
                System.out.printf(
                        Locale.ROOT,
                        "course of %d sessions: %.1f s, exit status %d%n",
                        lessons,
                        run.seconds(),
                        run.status());
            }
            try (Stream<String> lines = Files.lines(out)) {
                lines.limit(6).forEach(System.out::println);
            }
        } finally {
            Folders.delete(course);
        }
    }
}
