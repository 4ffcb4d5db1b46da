package org.bookholder.runtime.stage;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BiConsumer;

/** A crew of threads, one for each stage. Safe for use by several threads. */
public final class Workers implements Crew, AutoCloseable {
    private static final long PATIENCE_NANOS = 5_000_000_000L;

    private final List<Worker> workers = new CopyOnWriteArrayList<>();
    private final BiConsumer<Stage, Throwable> onFailure;

    /**
     * Creates a crew without threads.
     *
     * @param onFailure told of each stage's failure, on the stage's thread; the one place where failures are handled
     */
    public Workers(BiConsumer<Stage, Throwable> onFailure) {
        this.onFailure = onFailure;
    }

    @Override
    public void takeOn(Stage stage) {
        workers.removeIf(Worker::ended);
        workers.add(Worker.start(stage, onFailure));
    }

    /** Stops all stages after the step that each is in, and waits some seconds for their threads to let go. */
    @Override
    public void close() {
        workers.forEach(Worker::stop);
        try {
            for (Worker worker : workers) {
                worker.await(PATIENCE_NANOS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
