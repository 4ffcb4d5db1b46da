package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.testing.Folders;

/**
 * Measures how long the plan of a course takes of which nothing is recorded yet: lessons of sixty lines, drawn from those of the demo's
 * first lesson, on recording days of two to five hours. Beside it stands the time of the program's start and end alone.
 *
 * <p>Argument: how many lessons (default 200).
 */
public final class PlanTime {
    private static final int LINES = 60;
    private static final int LESSONS_A_DAY = 3;
    private static final LocalDate FIRST = LocalDate.of(2100, 1, 4);

    private PlanTime() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int lessons = args.length == 0 ? 200 : Integer.parseInt(args[0]);
        Path course = Files.createTempDirectory("bookholder-course");
        try {
            write(course, lessons, new Random(1));
            Path out = course.resolve("out.log");
            for (int i = 0; i < 5; i++) {
                Commands.Run start = Commands.run(out, "--version");
                Commands.Run run = Commands.run(out, "plan", course.toString());
                System.out.printf(
                        Locale.ROOT,
                        "plan of %d lessons: %.1f s, exit status %d; start and end alone: %.1f s%n",
                        lessons,
                        run.seconds(),
                        run.status(),
                        start.seconds());
            }
        } finally {
            Folders.delete(course);
        }
    }

    private static void write(Path course, int lessons, Random random) throws IOException, ProblemException {
        List<String> lines = ScriptReader.read(Path.of("demo-scripts", "lesson-1.md")).lines().stream()
                .map(ScriptLine::text)
                .toList();
        for (int lesson = 1; lesson <= lessons; lesson++) {
            StringBuilder text = new StringBuilder("# Lesson " + lesson + "\n");
            for (int line = 0; line < LINES; line++) {
                text.append('\n')
                        .append(lines.get(random.nextInt(lines.size())))
                        .append('\n');
            }
            Files.writeString(course.resolve(String.format(Locale.ROOT, "lesson-%03d.md", lesson)), text);
        }
        StringBuilder days = new StringBuilder("recording:\n  days:\n");
        LocalDate day = FIRST;
        for (int i = 0; i < lessons / LESSONS_A_DAY + 1; i++) {
            int hours = 2 + random.nextInt(4);
            days.append("    - {day: " + day + ", from: 9:30, hours: " + hours + "}\n");
            day = day.plusDays(day.getDayOfWeek() == DayOfWeek.FRIDAY ? 3 : 1 + random.nextInt(2));
        }
        Files.writeString(course.resolve("course.yaml"), days);
    }
}
