package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.bookholder.app.course.CourseDesk;
import org.bookholder.app.course.CourseJson;
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
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Opens the review of a stored session. */
@Command(
        name = "desk",
        sortOptions = false,
        description = {
            "Go through a session again in a browser: hear each attempt, decide what becomes of it, print the list; or "
                    + "through all sessions of a course, with its board and its plan.",
            "Open the address that is shown. Enter or Ctrl-C ends."
        })
final class DeskCommand implements Callable<Integer> {
    private static final long LOOK_MILLIS = 200;

    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FOLDER",
            description =
                    "A session's folder; a course's, for its board and all its sessions; or one in which sessions "
                            + "lie. Default: the newest session of all.")
    private @Nullable Path session;

    @Mixin
    private final DeskOptions options = new DeskOptions();

    DeskCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        if (session == null) {
            return review(newest());
        }
        if (SessionFolder.isSession(session)) {
            return review(session);
        }
        return course(session, isCourse(session));
    }

    private int review(Path place) throws ProblemException {
        DeskRequest request = options.request();
        int interrupted = new Recovery(here, terminal).settle(place);
        if (interrupted != 0) {
            return interrupted;
        }
        Path keys = Files.isWritable(place) ? place : keys(place);
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {});
                ReviewSession review = ReviewSession.of(here, place);
                RunningDesk desk = RunningDesk.of(here, request, keys, SessionDirectory.of(review.place()))) {
            terminal.out().println("Session: " + place);
            DeskOutput.print(desk, terminal);
            wait(shutdown);
        }
        return 0;
    }

    private int course(Path folder, boolean course) throws ProblemException {
        DeskRequest request = options.request();
        try (CourseDesk shelf = new CourseDesk(here, folder, course)) {
            // Problems with the page are reported before it is opened.
            shelf.now();
            int interrupted = new Recovery(here, terminal).settleAll(shelf.shown());
            if (interrupted != 0) {
                return interrupted;
            }
            try (Shutdown shutdown = Shutdown.onInterrupt(() -> {});
                    RunningDesk desk = RunningDesk.of(here, request, keys(folder), shelf)) {
                terminal.out().println((course ? "Course: " : "Sessions: ") + folder);
                DeskOutput.print(desk, terminal);
                wait(shutdown);
            }
        }
        return 0;
    }

    /** Where the credentials are stored: not in the folder itself, which may be shared or under version control. */
    private Path keys(Path folder) throws ProblemException {
        Path keys = here.data().resolve("desks").resolve(CourseJson.name(folder));
        try {
            return PrivateFiles.createFolder(keys);
        } catch (IOException e) {
            throw new ProblemException(
                    "the desk's keys cannot be kept", keys.toString(), "see that the folder can be written", e);
        }
    }

    /** Whether the folder holds a course; otherwise it holds sessions. */
    private static boolean isCourse(Path folder) throws ProblemException {
        try {
            CourseReader.read(folder);
            return true;
        } catch (ProblemException e) {
            boolean mistake = !e.where().equals(folder.toString());
            if (mistake || SessionFolders.folders(List.of(folder)).isEmpty()) {
                throw mistake ? e : nothing(folder);
            }
            return false;
        }
    }

    private void wait(Shutdown shutdown) {
        while (!shutdown.asked() && !terminal.entered()) {
            if (shutdown.await(LOOK_MILLIS)) {
                return;
            }
        }
    }

    private Path newest() throws ProblemException {
        List<SessionSummary> kept = SessionFolder.list(here.sessions(), here.locks()).stream()
                .filter(s -> s.standing() != SessionSummary.Standing.UNREADABLE
                        && s.standing() != SessionSummary.Standing.EMPTY)
                .toList();
        if (kept.isEmpty()) {
            throw nothing(here.sessions());
        }
        return kept.get(kept.size() - 1).folder();
    }

    private static ProblemException nothing(Path place) {
        return new ProblemException(
                "neither a session nor a script lies there",
                place.toString(),
                "name a session's folder or a course's; bookholder sessions lists sessions");
    }
}
