package org.bookholder.bench;

import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Stream;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Folders;

/**
 * Measures how long the board of a course takes that has been recorded: sixty lessons, each with a session of twenty minutes in
 * which its sixty lines were read three times over.
 *
 * <p>Argument: how many lessons (default 60).
 */
public final class CourseTime {
    private static final int LINES = 60;
    private static final int WORDS = 10;
    private static final int ROUNDS = 3;
    private static final double SECONDS_PER_WORD = 0.6;

    private CourseTime() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int lessons = args.length == 0 ? 60 : Integer.parseInt(args[0]);
        Path course = Files.createTempDirectory("bookholder-course");
        try {
            for (int lesson = 1; lesson <= lessons; lesson++) {
                String text = script(lesson);
                Path file =
                        Files.writeString(course.resolve(String.format(Locale.ROOT, "lesson-%02d.md", lesson)), text);
                Path sessions = Files.createDirectories(course.resolve("sessions"));
                record(sessions.resolve("lesson-" + lesson), file, text);
            }
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

    private static String script(int lesson) {
        StringBuilder text = new StringBuilder("---\ntitle: Wheel " + lesson + "\nlines: as-written\n---\n");
        for (int line = 1; line <= LINES; line++) {
            text.append("Turn the wheel and look at spoke ")
                    .append(line)
                    .append(" beside valve ")
                    .append(lesson)
                    .append(".\n");
        }
        return text.toString();
    }

    private static void record(Path place, Path file, String text) throws ProblemException {
        try (SessionFolder session = SessionFolder.create(place, new SessionLocks())) {
            session.journal().append(new SessionEvent.Opened(s(0), MORNING, "Wheel", file.toString(), text));
            session.journal().append(rolled(1, 0));
            double at = 0;
            for (int i = 0; i < ROUNDS * LINES; i++) {
                int line = i % LINES + 1;
                for (int word = 1; word <= WORDS; word++) {
                    at += SECONDS_PER_WORD;
                    session.journal().append(moved(at, line, word, 1));
                    session.journal().append(new SessionEvent.SoundMeasured(s(at), -30, -12, 0));
                }
                session.journal().append(settled(complete(1, i + 1, line, WORDS, at - WORDS * SECONDS_PER_WORD, at)));
            }
            session.journal().append(cut(1, at));
        }
    }
}
