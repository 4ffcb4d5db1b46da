package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonMatcher;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

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
        for (Path session : folders(List.of(own, here.sessions()))) {
            add(found, lessons, here, session, terminal);
        }
        return found;
    }

    /** The folders of all sessions in some places, sorted within each; none in a place that is not there. */
    static List<Path> folders(Collection<Path> places) throws ProblemException {
        Set<Path> once = new LinkedHashSet<>();
        places.forEach(place -> once.add(place.toAbsolutePath().normalize()));
        List<Path> folders = new ArrayList<>();
        for (Path place : once) {
            if (Files.isDirectory(place)) {
                try (Stream<Path> entries = Files.list(place)) {
                    entries.filter(SessionFolder::isSession).sorted().forEach(folders::add);
                } catch (IOException e) {
                    throw new ProblemException(
                            "the sessions cannot be read", place.toString(), "check its permissions", e);
                }
            }
        }
        return folders;
    }

    private static void add(
            Map<Lesson, List<RecordedSession>> found,
            List<Lesson> lessons,
            Surroundings here,
            Path folder,
            Terminal terminal) {
        try {
            Optional<KeptSession> kept = KeptSession.open(
                    here, folder, script -> lesson(lessons, script).isPresent());
            if (kept.isPresent()) {
                try (KeptSession session = kept.get()) {
                    if (!session.state().takes().all().isEmpty()) {
                        lesson(lessons, session.state().script())
                                .ifPresent(lesson -> found.computeIfAbsent(lesson, none -> new ArrayList<>())
                                        .add(new RecordedSession(folder, session.state())));
                    }
                }
            }
        } catch (ProblemException e) {
            terminal.err().println("bookholder: left out: " + e.getMessage());
        }
    }

    /** The lesson that a session's script is of; empty if it is of none. */
    static Optional<Lesson> lesson(List<Lesson> lessons, Script read) {
        return LessonMatcher.lesson(lessons, Path.of(read.source()).toAbsolutePath(), read);
    }
}
