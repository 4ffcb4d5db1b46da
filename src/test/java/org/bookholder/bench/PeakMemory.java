package org.bookholder.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;

/** Watches, until it is closed, how much memory this program and those that it started hold together. Linux only. */
final class PeakMemory implements AutoCloseable {
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor();
    private final AtomicLong most = new AtomicLong();

    PeakMemory() {
        var unused = watch.scheduleAtFixedRate(
                () -> most.accumulateAndGet(held(), Math::max), 0, 200, TimeUnit.MILLISECONDS);
    }

    /** The most so far, in bytes. */
    long most() {
        return most.get();
    }

    @Override
    public void close() {
        watch.shutdownNow();
    }

    private static long held() {
        ProcessHandle self = ProcessHandle.current();
        return Stream.concat(Stream.of(self), self.descendants())
                .mapToLong(process -> resident(process.pid()))
                .sum();
    }

    /** In bytes; zero for a program that has ended. */
    private static long resident(long process) {
        try (Stream<String> lines = Files.lines(Path.of("/proc/" + process + "/status"))) {
            return lines.filter(line -> line.startsWith("VmRSS:"))
                    .mapToLong(line -> 1024 * Long.parseLong(line.replaceAll("[^0-9]", "")))
                    .sum();
        } catch (IOException | UncheckedIOException ended) {
            return 0;
        }
    }
}
