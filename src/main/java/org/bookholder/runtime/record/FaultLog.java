package org.bookholder.runtime.record;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.bookholder.files.PrivateFiles;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.StageFault;

/**
 * The log of the program's faults: a plain text file of entries with time, stage, consequence and cause. Adding an
 * entry never blocks; a stage writes it. Safe for use by several threads, except {@link #flush}.
 */
public final class FaultLog {
    /** The log's file in a session's folder. */
    public static final String FILE = "fault.log";

    private static final int ROOM = 100;

    private final Output output;
    private final InstantSource clock;
    private final Mailbox<String> waiting = new Mailbox<>(ROOM);
    private final List<String> unwritten = new ArrayList<>();

    /** Where entries are written. */
    @FunctionalInterface
    public interface Output {
        /** Adds text at the end. */
        void append(String text) throws IOException;
    }

    /** Creates a log; {@code clock} gives the time of day of entries. */
    public FaultLog(Output output, InstantSource clock) {
        this.output = output;
        this.clock = clock;
    }

    /** The log in a session's folder; its file is created with the first entry. */
    public static FaultLog in(Path folder, InstantSource clock) {
        Path file = folder.resolve(FILE);
        return new FaultLog(text -> append(file, text), clock);
    }

    private static void append(Path file, String text) throws IOException {
        PrivateFiles.createIfMissing(file);
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
        }
    }

    /** Adds an entry. If a hundred entries are waiting because the disk fails, further ones are dropped. */
    public void add(StageFault fault) {
        StringWriter entry = new StringWriter();
        entry.append(clock.instant().truncatedTo(ChronoUnit.MILLIS).toString())
                .append(" stage '")
                .append(fault.role())
                .append("': ")
                .append(text(fault.consequence()))
                .append('\n');
        fault.cause().printStackTrace(new PrintWriter(entry, true));
        waiting.offer(entry.toString());
    }

    private static String text(StageFault.Consequence consequence) {
        return switch (consequence) {
            case SESSION_ENDS -> "failed, the session ends";
            case RESTARTS -> "failed, is started again";
            case GIVEN_UP -> "failed, is done without";
            case LEFT_BEHIND -> "did not stop, is left behind";
        };
    }

    /** The stage that writes; it ends when {@code over} is true. */
    public Stage stage(BooleanSupplier over) {
        return new Writing(over);
    }

    /**
     * Writes waiting entries. Called by the log's stage, or after that stage has ended. Entries that cannot be written
     * are tried again in the next call.
     *
     * @return the entries that could not be written so far
     */
    public List<String> flush() {
        for (String next = waiting.poll(); next != null; next = waiting.poll()) {
            unwritten.add(next);
        }
        try {
            while (!unwritten.isEmpty()) {
                output.append(unwritten.get(0));
                unwritten.remove(0);
            }
        } catch (IOException full) {
            return List.copyOf(unwritten);
        }
        return List.of();
    }

    private final class Writing implements Stage {
        private final BooleanSupplier over;

        Writing(BooleanSupplier over) {
            this.over = over;
        }

        @Override
        public String role() {
            return "log";
        }

        @Override
        public Criticality criticality() {
            return Criticality.OPTIONAL;
        }

        @Override
        public int doWork() {
            if (waiting.size() > 0) {
                flush();
                return 1;
            }
            return over.getAsBoolean() ? -1 : 0;
        }

        @Override
        public void onClose() {
            flush();
        }
    }
}
