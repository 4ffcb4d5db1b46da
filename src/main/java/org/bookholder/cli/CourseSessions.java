package org.bookholder.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.course.Lesson;
import org.bookholder.course.Matching;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.problem.ProblemException;

/** Finds the sessions of a course: in its own folder, and where sessions go by themselves. */
final class CourseSessions {
    private CourseSessions() {}

    /**
     * The sessions of each lesson; those that cannot be read are named on the standard error and left out.
     *
     * @param own the course's own folder of sessions; need not be there
     */
    static Map<Lesson, List<RecordedSession>> of(List<Lesson> lessons, Path own, Surroundings here, Terminal terminal)
            throws ProblemException {
        Map<Lesson, List<RecordedSession>> found = new HashMap<>();
        Set<Path> places = new LinkedHashSet<>(List.of(
                own.toAbsolutePath().normalize(),
                here.sessions().toAbsolutePath().normalize()));
        for (Path place : places) {
            for (SessionSummary summary : SessionFolder.list(place)) {
                if (summary.takes() > 0) {
                    add(found, lessons, here, summary.folder(), terminal);
                }
            }
        }
        return found;
    }

    private static void add(
            Map<Lesson, List<RecordedSession>> found,
            List<Lesson> lessons,
            Surroundings here,
            Path folder,
            Terminal terminal) {
        try (KeptSession kept = KeptSession.open(here, folder)) {
            Path source = Path.of(kept.state().script().source()).toAbsolutePath();
            Optional<Lesson> lesson =
                    Matching.lesson(lessons, source, kept.state().script());
            lesson.ifPresent(l ->
                    found.computeIfAbsent(l, none -> new ArrayList<>()).add(new RecordedSession(folder, kept.state())));
        } catch (ProblemException e) {
            terminal.err().println("bookholder: left out: " + e.getMessage());
        }
    }
}
