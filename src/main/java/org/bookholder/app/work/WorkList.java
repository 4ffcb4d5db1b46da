package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Job;
import org.bookholder.problem.ProblemException;

/** The kinds of work that the page can ask for, each named as the command that does the same. */
public final class WorkList {
    private final Map<String, Maker> makers;
    private final ListenWork listening;

    /** Makes a job of what a form holds. */
    @FunctionalInterface
    interface Maker {
        /**
         * Makes the job, without beginning it.
         *
         * @throws ProblemException if something in the form is missing or not understood
         */
        Job job(WorkRequest request) throws ProblemException;
    }

    /**
     * Begins.
     *
     * @param address the address of a session's page; empty if no course shows it
     * @param letGo closes a session that is only looked at, so that it can be changed
     */
    public WorkList(Environment here, Function<Path, Optional<String>> address, Consumer<Path> letGo) {
        WorkPlace place = new WorkPlace(here, address, letGo);
        listening = new ListenWork(place);
        makers = Map.of(
                "handoff", new HandOffWork(place),
                "film", new FilmWork(place),
                "match", new MatchWork(place),
                "log", new LogWork(place),
                "check", new CheckWork(place),
                "pack", new PackWork(place),
                "unpack", new UnpackWork(place),
                "repair", new RepairWork(place),
                "time", new TimeWork(here));
    }

    /** A job that nobody asks for: to listen again to a session that was broken off. */
    public Job listening(Path session) {
        return listening.job(session);
    }

    /**
     * The job of that kind.
     *
     * @return empty if there is no such kind
     * @throws ProblemException if something in the form is missing or not understood
     */
    public Optional<Job> job(String kind, WorkRequest request) throws ProblemException {
        Maker maker = makers.get(kind);
        return maker == null ? Optional.empty() : Optional.of(maker.job(request));
    }
}
