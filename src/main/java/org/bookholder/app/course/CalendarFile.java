package org.bookholder.app.course;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.bookholder.course.calendar.SessionCalendar;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.problem.ProblemException;

/** The file with a course's recording sessions for calendar programs. What it held before tells which event is which session's. */
public final class CalendarFile {
    /** Its name in the course's folder, unless another one is asked for. */
    public static final String NAME = "recording-days.ics";

    private static final String OTHER_NAME = "give the file another name";

    private CalendarFile() {}

    /**
     * Writes the plan's sessions, whole or not at all.
     *
     * @param now when it is written
     * @return how many sessions have a day and are in the file
     * @throws ProblemException if no session has a day, if the file is there and is no calendar of this program, or if it can't be
     *     read or written
     */
    public static long write(Path file, CoursePlan plan, Instant now) throws ProblemException {
        CourseStatus status = plan.status();
        String title = status.course().title();
        long sessions = status.plan().sessions().stream()
                .filter(session -> session.date().isPresent())
                .count();
        if (sessions == 0) {
            throw new ProblemException(
                    "no session has a day, so there is nothing for a calendar",
                    title,
                    "write recording: days: into course.yaml");
        }
        try {
            // A file that is no text must be refused as no calendar, not as unreadable.
            Optional<String> before = Files.exists(file)
                    ? Optional.of(new String(Files.readAllBytes(file), StandardCharsets.UTF_8))
                    : Optional.empty();
            String text = SessionCalendar.of(title, status.plan(), plan.zone(), now, before)
                    .orElseThrow(() -> new ProblemException(
                            "this file is no calendar of recording sessions, and it is not written over",
                            file.toString(),
                            OTHER_NAME));
            new AtomicFiles(Access.SYSTEM_DEFAULT).write(file, text);
            return sessions;
        } catch (IOException e) {
            throw new ProblemException(
                    "the calendar cannot be written", file.toString(), "name a file in a folder that you may write", e);
        }
    }
}
