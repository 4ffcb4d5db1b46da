package org.bookholder.runtime.stage;

import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;

/**
 * A thread that makes calls for another thread, which waits for each of them, and that can be given up in the middle of a call: for a
 * library that must not run on once something has failed. It begins with the first call and ends with the program. For one caller at
 * a time.
 */
public final class CallThread {
    private final Supplier<? extends RuntimeException> why;
    private final ExecutorService thread;
    private volatile CompletableFuture<?> underWay = new CompletableFuture<>();
    private volatile boolean givenUp;

    /** A call that returns something or fails with {@code E}. */
    @FunctionalInterface
    public interface Call<T, E extends Exception> {
        T make() throws E;
    }

    /**
     * Does not begin yet.
     *
     * @param role names the thread
     * @param why what callers are thrown once it is given up
     */
    public CallThread(String role, Supplier<? extends RuntimeException> why) {
        this.why = why;
        thread = Executors.newSingleThreadExecutor(work -> {
            Thread own = new Thread(work, "bookholder " + role);
            own.setDaemon(true);
            return own;
        });
    }

    /** Makes a call on this thread and waits for its outcome, which is passed on as it is. */
    public <T, E extends Exception> T call(Call<T, E> call) throws E {
        if (givenUp) {
            throw why.get();
        }
        CompletableFuture<T> outcome = new CompletableFuture<>();
        underWay = outcome;
        thread.execute(() -> make(call, outcome));
        try {
            return outcome.join();
        } catch (CompletionException e) {
            Throwable failure = Objects.requireNonNull(e.getCause());
            if (failure instanceof RuntimeException fault) {
                throw fault;
            }
            if (failure instanceof Error fault) {
                throw fault;
            }
            // A call fails with nothing else.
            @SuppressWarnings("unchecked")
            E expected = (E) failure;
            throw expected;
        }
    }

    private static <T, E extends Exception> void make(Call<T, E> call, CompletableFuture<T> outcome) {
        try {
            outcome.complete(call.make());
        } catch (Exception | Error failure) {
            outcome.completeExceptionally(failure);
        }
    }

    /** Gives this thread up, on which it must be called: it never returns. Whoever waits for the call under way goes on at once. */
    public void giveUp() {
        givenUp = true;
        underWay.completeExceptionally(why.get());
        while (true) {
            new CompletableFuture<>().join();
        }
    }
}
