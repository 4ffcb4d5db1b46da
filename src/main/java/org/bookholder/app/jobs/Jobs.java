package org.bookholder.app.jobs;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.jobs.JobStatus.Step;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.runtime.stage.Stage;

/**
 * The jobs of home: those that wait, the ones that are running, and the last that have ended. Jobs that listen run one after
 * another, and so do the others beside them. While a lesson is being read those that listen wait. Safe for use by several
 * threads.
 */
public final class Jobs {
    /** So many jobs that have ended are remembered. */
    private static final int MOST_ENDED = 20;

    private static final long LOOK_MILLIS = 100;

    private final TreeMap<Integer, JobStatus> all = new TreeMap<>();
    private final Map<Integer, CompletionLatch> stops = new HashMap<>();
    private final BooleanSupplier reading;
    private final Consumer<Throwable> faults;
    private int last;

    /**
     * Begins without jobs.
     *
     * @param reading whether a lesson is being read
     * @param faults is told of faults of the program that end a job
     */
    public Jobs(BooleanSupplier reading, Consumer<Throwable> faults) {
        this.reading = reading;
        this.faults = faults;
    }

    /** The two stages that do the work: one for jobs that listen, one for the others. */
    public List<Stage> stages() {
        return List.of(new JobStage(this, true), new JobStage(this, false));
    }

    /** Adds a job; returns its number. */
    public synchronized int add(Job job) {
        last++;
        all.put(last, JobStatus.waiting(last, job));
        List<Integer> ended = all.values().stream()
                .filter(status -> !status.goesOn())
                .map(JobStatus::id)
                .toList();
        ended.stream().limit(Math.max(0, ended.size() - MOST_ENDED)).forEach(all::remove);
        return last;
    }

    /** All jobs, the oldest first. */
    public synchronized List<JobStatus> all() {
        return List.copyOf(all.values());
    }

    /** Whether any has not ended. */
    public synchronized boolean goOn() {
        return all.values().stream().anyMatch(JobStatus::goesOn);
    }

    /** Stops a job; one that still waits has ended at once. Does nothing if there is none, or it has ended. */
    public synchronized void stop(int id) {
        change(id, status -> switch (status.step()) {
            case WAITING -> status.ended(Step.STOPPED, Optional.empty(), "");
            case RUNNING -> status.at(Step.STOPPING);
            default -> status;
        });
        Optional.ofNullable(stops.get(id)).ifPresent(CompletionLatch::come);
    }

    /** Stops all of them, as the program ends. */
    public synchronized void stopAll() {
        all().forEach(status -> stop(status.id()));
    }

    /** Takes a job that has ended off the list. */
    public synchronized void dismiss(int id) {
        Optional.ofNullable(all.get(id)).filter(status -> !status.goesOn()).ifPresent(status -> all.remove(id));
    }

    /** Does the next job that can be done now, to its end; says whether there was one. */
    boolean work(boolean listening) {
        Optional<JobStatus> next = next(listening);
        next.ifPresent(this::run);
        return next.isPresent();
    }

    private synchronized Optional<JobStatus> next(boolean listening) {
        boolean held = listening && reading.getAsBoolean();
        List<JobStatus> waiting = all.values().stream()
                .filter(status -> status.step() == Step.WAITING && status.job().listens() == listening)
                .toList();
        waiting.forEach(status -> change(status.id(), now -> now.held(held)));
        if (held || waiting.isEmpty()) {
            return Optional.empty();
        }
        change(waiting.get(0).id(), status -> status.at(Step.RUNNING));
        return Optional.of(waiting.get(0));
    }

    private void run(JobStatus begun) {
        int id = begun.id();
        try {
            JobResult result =
                    begun.job().work().run(new Control(id, begun.job().listens()));
            end(id, Step.DONE, Optional.of(result), "");
        } catch (ProblemException e) {
            end(id, Step.FAILED, Optional.empty(), String.valueOf(e.getMessage()));
        } catch (OperationInterrupted e) {
            end(id, Step.STOPPED, Optional.empty(), "");
        } catch (RuntimeException | Error e) {
            faults.accept(e);
            end(id, Step.FAILED, Optional.empty(), "A fault of the program stopped it (" + e + "); please report it.");
        }
    }

    private synchronized CompletionLatch latch(int id) {
        return stops.computeIfAbsent(id, none -> new CompletionLatch());
    }

    private synchronized void end(int id, Step step, Optional<JobResult> result, String problem) {
        stops.remove(id);
        change(id, status -> {
            boolean stopped = step == Step.DONE && status.step() == Step.STOPPING;
            return status.ended(stopped ? Step.STOPPED : step, result, problem);
        });
    }

    private synchronized void change(int id, UnaryOperator<JobStatus> how) {
        all.computeIfPresent(id, (same, status) -> how.apply(status));
    }

    /** Waits while the job is held; says whether it is to stop. */
    private boolean stopped(int id, boolean listens, CompletionLatch stop) {
        while (listens && reading.getAsBoolean() && !stopping(id)) {
            change(id, status -> status.held(true));
            if (stop.await(LOOK_MILLIS)) {
                return true;
            }
        }
        change(id, status -> status.held(false));
        return stopping(id);
    }

    private synchronized boolean stopping(int id) {
        JobStatus status = all.get(id);
        return status == null || status.step() != Step.RUNNING;
    }

    private final class Control implements JobControl {
        private final int id;
        private final boolean listens;
        private final CompletionLatch asked;
        private final Interruption stop;

        Control(int id, boolean listens) {
            this.id = id;
            this.listens = listens;
            this.asked = latch(id);
            this.stop = new Interruption(() -> stopped(id, listens, asked));
        }

        @Override
        public Interruption stop() {
            return stop;
        }

        @Override
        public void hold() {
            // Whoever began the work stops it; its other threads only wait.
            stopped(id, listens, asked);
        }

        @Override
        public void reached(Progress progress) {
            change(id, status -> status.reached(progress));
        }

        @Override
        public void say(String line) {
            change(id, status -> status.saying(line));
        }
    }
}
