package org.bookholder.runtime.source;

import java.util.Optional;
import java.util.function.Predicate;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;

/** Reads a source on its own thread until enough was heard or the source ends. Safe for use by several threads. */
public final class SourceListener implements AutoCloseable {
    private final CompletionLatch over = new CompletionLatch();
    private final Latest<String> trouble = new Latest<>("");
    private final Latest<Optional<Throwable>> fault = new Latest<>(Optional.empty());
    private final Workers workers = new Workers(() -> 0, failed -> fault.set(Optional.of(failed.cause())));

    private SourceListener() {}

    /**
     * Starts listening; closes the source at the end.
     *
     * @param wanted receives each block on the listening thread and returns whether more is wanted
     */
    public static SourceListener start(AudioSource source, Predicate<AudioBlock> wanted) {
        SourceListener listening = new SourceListener();
        listening.workers.takeOn(listening.new Listener(source, wanted));
        return listening;
    }

    /** Waits for the end; returns true if it came within {@code millis} or the thread was interrupted. */
    public boolean await(long millis) {
        return over.await(millis);
    }

    /** Why the device delivered no more, for people; empty if it works, or if a file has ended. */
    public String trouble() {
        return trouble.get();
    }

    /** What failed, if anything; the listening is then over. */
    public Optional<Throwable> fault() {
        return fault.get();
    }

    @Override
    public void close() {
        workers.close();
    }

    private final class Listener implements Stage, AudioRead.Reader {
        private final AudioSource source;
        private final Predicate<AudioBlock> wanted;

        Listener(AudioSource source, Predicate<AudioBlock> wanted) {
            this.source = source;
            this.wanted = wanted;
        }

        @Override
        public String role() {
            return "listening";
        }

        @Override
        public Criticality criticality() {
            return Criticality.ESSENTIAL;
        }

        @Override
        public int doWork() {
            return source.read().to(this);
        }

        @Override
        public int samples(AudioBlock block) {
            return wanted.test(block) ? 1 : -1;
        }

        @Override
        public int ended() {
            return -1;
        }

        @Override
        public int gone(String reason) {
            trouble.set(reason);
            return -1;
        }

        @Override
        public void onClose() {
            source.close();
            over.come();
        }
    }
}
