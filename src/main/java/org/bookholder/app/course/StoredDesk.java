package org.bookholder.app.course;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.review.ReviewSession;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.course.CourseReader;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;

/**
 * The desk of what is stored in a folder: one session, a course, or several sessions. Find it, settle the sessions that it
 * {@link #shown shows}, then open it. Its methods are for one thread.
 */
public final class StoredDesk implements AutoCloseable {
    /** What a folder holds. */
    public enum Kind {
        /** One session. */
        SESSION,
        /** A course with its scripts. */
        COURSE,
        /** Sessions, and no course. */
        SESSIONS
    }

    private final Environment here;
    private final Kind kind;
    private final Path folder;
    private final Optional<CourseDesk> course;
    private final Deque<Closing> open = new ArrayDeque<>();

    /** Closes one of the parts. */
    private interface Closing {
        void close();
    }

    private StoredDesk(Environment here, Kind kind, Path folder) {
        this.here = here;
        this.kind = kind;
        this.folder = folder;
        this.course = kind == Kind.SESSION
                ? Optional.empty()
                : Optional.of(new CourseDesk(here, folder, kind == Kind.COURSE));
        course.ifPresent(desk -> open.push(desk::close));
    }

    /**
     * Finds out what a folder holds.
     *
     * @throws ProblemException if that is nothing that a desk can show, or a course with a mistake in it
     */
    public static StoredDesk of(Environment here, Path folder) throws ProblemException {
        StoredDesk desk = new StoredDesk(here, kind(folder), folder);
        if (desk.course.isPresent()) {
            // What is wrong with the page is reported before it is opened.
            desk.course.get().now();
        }
        return desk;
    }

    /** The same for the session that was begun last of those in the user's own folder. */
    public static StoredDesk newest(Environment here) throws ProblemException {
        List<SessionSummary> readable = SessionFolder.list(here.sessions(), here.locks()).stream()
                .filter(session -> session.standing() != Standing.UNREADABLE && session.standing() != Standing.EMPTY)
                .toList();
        if (readable.isEmpty()) {
            throw nothing(here.sessions());
        }
        return new StoredDesk(
                here, Kind.SESSION, readable.get(readable.size() - 1).folder());
    }

    private static Kind kind(Path folder) throws ProblemException {
        if (SessionFolder.isSession(folder)) {
            return Kind.SESSION;
        }
        try {
            CourseReader.readable(folder);
            return Kind.COURSE;
        } catch (ProblemException e) {
            boolean mistake = !e.where().equals(folder.toString());
            if (mistake) {
                throw e;
            }
            if (SessionFolders.folders(List.of(folder)).isEmpty()) {
                throw nothing(folder);
            }
            return Kind.SESSIONS;
        }
    }

    private static ProblemException nothing(Path place) {
        return new ProblemException(
                "neither a session nor a script lies there",
                place.toString(),
                "name a session's folder or a course's; bookholder sessions lists sessions");
    }

    public Kind kind() {
        return kind;
    }

    public Path folder() {
        return folder;
    }

    /** The folders of the sessions that it shows. */
    public List<Path> shown() throws ProblemException {
        return course.isPresent() ? course.get().shown() : List.of(folder);
    }

    /** Opens the desk; it stays open until this is closed. */
    public RunningDesk open(DeskRequest request) throws ProblemException {
        SessionDirectory directory = course.isPresent() ? course.get() : SessionDirectory.of(review().place());
        RunningDesk desk = RunningDesk.of(here, request, credentials(), directory);
        open.push(desk::close);
        return desk;
    }

    private ReviewSession review() throws ProblemException {
        ReviewSession review = ReviewSession.of(here, folder);
        open.push(review::close);
        return review;
    }

    /**
     * Where the desk's credentials are stored: with a session of one's own, but not in a course, which may be shared or under
     * version control.
     */
    private Path credentials() throws ProblemException {
        if (kind == Kind.SESSION && Files.isWritable(folder)) {
            return folder;
        }
        Path place = here.data().resolve("desks").resolve(CourseJson.name(folder));
        try {
            return PrivateFiles.createFolder(place);
        } catch (IOException e) {
            throw new ProblemException(
                    "the desk's keys cannot be kept", place.toString(), "see that the folder can be written", e);
        }
    }

    /** Closes the desk first, then what it shows. */
    @Override
    public void close() {
        while (!open.isEmpty()) {
            open.pop().close();
        }
    }
}
