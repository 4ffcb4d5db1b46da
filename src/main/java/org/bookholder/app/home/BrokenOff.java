package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.JobStatus;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.session.Overflows;
import org.bookholder.app.session.SessionCache;
import org.bookholder.app.work.WorkList;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary.Standing;

/**
 * Has sessions listened to again in the background that a kill broke off, or of which a part was kept in a second place: those of
 * the course that is shown. Until then, lines that were read clean may be listed as pickups. Safe for use by several threads.
 */
final class BrokenOff {
    /** A job that comes to nothing is not begun for ever, whatever changes in the session's folder. */
    private static final int MOST_TRIES = 3;

    private final Environment here;
    private final Jobs jobs;
    private final WorkList work;
    /** What each session's journal was like when it was looked at. */
    private final Map<Path, String> looked = new HashMap<>();

    private final Map<Path, Integer> tries = new HashMap<>();
    private final Set<Path> damaged = new TreeSet<>();
    /** The jobs that were begun, by their sessions. */
    private final Map<Path, Integer> begun = new HashMap<>();

    BrokenOff(Environment here, Jobs jobs, WorkList work) {
        this.here = here;
        this.jobs = jobs;
        this.work = work;
    }

    /**
     * Looks at sessions that have changed since, and begins a job for each of the course's that needs it.
     *
     * @param all the sessions that may be the course's, also those that are damaged so that it cannot be told
     */
    synchronized void look(CourseOverview course, Collection<SessionCache.Kept> all) {
        Set<Path> own = course.sessions().values().stream()
                .flatMap(Collection::stream)
                .map(RecordedSession::folder)
                .collect(Collectors.toSet());
        all.forEach(kept -> look(kept, own.contains(kept.folder())));
    }

    private void look(SessionCache.Kept kept, boolean own) {
        Path session = kept.folder();
        // One that was damaged a moment ago may be the course's when it is repaired.
        String stamp = kept.stamp() + own;
        if (stamp.equals(looked.get(session)) || listening().contains(session)) {
            return;
        }
        if (kept.damaged()) {
            damaged.add(session);
        } else {
            damaged.remove(session);
        }
        boolean needed = own
                && !kept.damaged()
                && (!kept.unsettled().isEmpty() || !Overflows.of(here, session).isEmpty());
        if (needed && SessionFolder.summary(session, here.locks()).standing() == Standing.OPEN) {
            // It goes on elsewhere; if it is killed there, nothing in it changes any more.
            return;
        }
        if (needed && tries.merge(session, 1, Integer::sum) <= MOST_TRIES) {
            begun.put(session, jobs.add(work.listening(session)));
        }
        looked.put(session, stamp);
    }

    /** The sessions that were found to be damaged: each with its name and folder. */
    synchronized JsonNode damaged() {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        damaged.forEach(session -> all.addObject()
                .put("name", String.valueOf(session.getFileName()))
                .put("folder", session.toString()));
        return all;
    }

    /** Whether a session of a lesson is still to be listened to. */
    synchronized boolean listening(CourseOverview course, Lesson lesson) {
        Set<Path> listening = listening();
        return course.sessions().getOrDefault(lesson, List.of()).stream()
                .map(RecordedSession::folder)
                .anyMatch(listening::contains);
    }

    private Set<Path> listening() {
        Set<Integer> going =
                jobs.all().stream().filter(JobStatus::goesOn).map(JobStatus::id).collect(Collectors.toSet());
        return begun.entrySet().stream()
                .filter(entry -> going.contains(entry.getValue()))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }
}
