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
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.Attempt;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** Writes a course of real size: lessons of sixty lines, with sessions of twenty minutes in which each was read three times. */
final class RecordedLessons {
    private static final int LINES = 60;
    private static final int WORDS = 10;
    private static final int ROUNDS = 3;
    private static final double SECONDS_PER_WORD = 0.6;

    private RecordedLessons() {}

    /** Writes lessons into {@code course}, and so many sessions into {@code place}, of one lesson after the other. */
    static void write(Path course, int lessons, Path place, int sessions) throws IOException, ProblemException {
        List<Path> files = new ArrayList<>();
        for (int lesson = 1; lesson <= lessons; lesson++) {
            files.add(Files.writeString(
                    course.resolve(String.format(Locale.ROOT, "lesson-%02d.md", lesson)), script(lesson)));
        }
        Files.createDirectories(place);
        for (int session = 0; session < sessions; session++) {
            Path file = files.get(session % lessons);
            record(place.resolve("session-" + (session + 1)), file, Files.readString(file));
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
        List<SessionEvent> events = new ArrayList<>();
        events.add(new SessionEvent.Opened(s(0), MORNING, "Wheel", file.toString(), text));
        events.add(rolled(1, 0));
        List<Attempt> attempts = new ArrayList<>();
        double at = 0;
        for (int i = 0; i < ROUNDS * LINES; i++) {
            int line = i % LINES + 1;
            for (int word = 1; word <= WORDS; word++) {
                at += SECONDS_PER_WORD;
                events.add(moved(at, line, word, 1));
                events.add(new SessionEvent.SoundMeasured(s(at), -30, -12, 0));
            }
            Attempt attempt = complete(1, i + 1, line, WORDS, at - WORDS * SECONDS_PER_WORD, at);
            attempts.add(attempt);
            events.add(settled(attempt));
        }
        events.add(cut(1, at));
        events.add(new SessionEvent.TakeSettled(s(at), 1, attempts, List.of()));
        try (SessionFolder session = SessionFolder.create(place, new SessionLocks())) {
            session.journal().append(events);
        }
    }
}
