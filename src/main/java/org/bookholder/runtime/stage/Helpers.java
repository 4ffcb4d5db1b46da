package org.bookholder.runtime.stage;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.bookholder.files.SideBySide;

/**
 * Threads that help the one that asks, each with the next item that nobody has begun. They begin when there is something to do, and end
 * with it. Safe for use by several threads.
 */
public final class Helpers implements SideBySide {
    private final int most;

    /** So many threads at most, besides the one that asks. */
    public Helpers(int most) {
        this.most = most;
    }

    /** One for each processor of this machine, but for that of the thread that asks. */
    public static Helpers ofThisMachine() {
        return new Helpers(Runtime.getRuntime().availableProcessors() - 1);
    }

    @Override
    public <T, R> List<R> each(List<T> items, Function<T, R> work) {
        List<CompletableFuture<R>> done = new ArrayList<>();
        items.forEach(item -> done.add(new CompletableFuture<>()));
        AtomicInteger next = new AtomicInteger();
        Runnable share = () -> {
            for (int i = next.getAndIncrement(); i < items.size(); i = next.getAndIncrement()) {
                finish(items.get(i), work, done.get(i));
            }
        };
        for (int i = 0; i < Math.min(most, items.size() - 1); i++) {
            Thread helper = new Thread(share, "bookholder helper " + (i + 1));
            helper.setDaemon(true);
            helper.start();
        }
        share.run();
        // Also where an early item failed, no helper works on when this returns.
        CompletableFuture.allOf(done.toArray(CompletableFuture[]::new))
                .handle((none, fault) -> true)
                .join();
        return done.stream().map(Helpers::outcome).toList();
    }

    private static <T, R> void finish(T item, Function<T, R> work, CompletableFuture<R> done) {
        try {
            done.complete(work.apply(item));
        } catch (RuntimeException | Error fault) {
            done.completeExceptionally(fault);
        }
    }

    private static <R> R outcome(CompletableFuture<R> done) {
        try {
            return done.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof Error fault) {
                throw fault;
            }
            throw e.getCause() instanceof RuntimeException fault ? fault : e;
        }
    }
}
