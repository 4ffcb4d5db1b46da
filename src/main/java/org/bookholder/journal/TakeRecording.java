package org.bookholder.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.timing.StreamTime;

/**
 * Writes a take's audio to a WAV file that stays readable whatever happens: one channel, 16 bit, at the source's rate.
 *
 * <p>{@link #append} hands every block to the operating system before it returns, so a kill of the program loses
 * nothing that was appended. {@link #sync} corrects the sizes in the header and forces the file to disk; called once a
 * second, it limits what a power cut can lose.
 *
 * <p>Threads: one thread appends and closes; {@code sync} may be called from another. Each has its own file handle (a
 * handle has one position, and {@code sync} must seek to the header). They share only a count of bytes, so {@code
 * append} never waits while the disk is forced. Only {@code sync} and {@code close} exclude each other.
 */
public final class TakeRecording implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 14;

    private final Path path;
    private final int rate;
    private final StreamTime takeStart;
    private final long maxData;
    private final Opener opener;
    private final RandomAccessFile samples;
    private final RandomAccessFile header;
    private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    private final Object syncing = new Object();
    private volatile long data;
    private boolean failed;
    private boolean syncFailed;
    private boolean closed;

    /** Opens a file for reading and writing, and forces it; passed in so that a test can make it fail, or count. */
    @FunctionalInterface
    interface Opener {
        RandomAccessFile open(Path file) throws IOException;

        /** Returns when what was written to the file has reached the disk. */
        default void force(RandomAccessFile file) throws IOException {
            file.getChannel().force(false);
        }
    }

    private TakeRecording(Path path, int rate, StreamTime takeStart, long maxData, Opener opener) throws IOException {
        this.path = path;
        this.rate = rate;
        this.takeStart = takeStart;
        this.maxData = maxData;
        this.opener = opener;
        samples = opener.open(path);
        try {
            samples.setLength(0);
            samples.write(WavHeader.of(rate, 0));
            header = opener.open(path);
        } catch (IOException e) {
            samples.close();
            throw e;
        }
    }

    /**
     * Creates a file, or overwrites it.
     *
     * @param file the file
     * @param rate samples per second
     * @param takeStart when the take's first sample sounds, on the session's audio
     * @throws ProblemException if the file cannot be written
     */
    public static TakeRecording create(Path file, int rate, StreamTime takeStart) throws ProblemException {
        return create(file, rate, takeStart, WavHeader.MAX_DATA, TakeRecording::open);
    }

    private static RandomAccessFile open(Path file) throws IOException {
        PrivateFiles.createIfMissing(file);
        return new RandomAccessFile(file.toFile(), "rw");
    }

    static TakeRecording create(Path file, int rate, StreamTime takeStart, long maxData, Opener opener)
            throws ProblemException {
        if (rate <= 0) {
            throw new IllegalArgumentException("rate (" + rate + ") must be positive");
        }
        try {
            return new TakeRecording(file, rate, takeStart, maxData, opener);
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }

    /** The file. */
    public Path path() {
        return path;
    }

    /** End of the last sample written, in session time. Any thread may call it. */
    public StreamTime end() {
        return takeStart.plus(StreamTime.ofSamples(data / WavHeader.BYTES_PER_SAMPLE, rate));
    }

    /**
     * Adds a block. Audio lost since the block before becomes silence. Never waits for another thread.
     *
     * @param block audio at the recording's rate, in the session's time, not before {@link #end}
     * @throws ProblemException the first time that the file takes no more (disk full, or longer than a WAV file can
     *     be); what was written stays readable, and later blocks are dropped silently
     */
    public void append(AudioBlock block) throws ProblemException {
        if (block.rate() != rate) {
            throw new IllegalArgumentException("block.rate (" + block.rate() + ") must be " + rate);
        }
        long gap = block.start().since(takeStart).samples(rate) - data / WavHeader.BYTES_PER_SAMPLE;
        // At rates that do not divide 48,000, a time is off by up to one sample. That is not a gap, and it does not
        // accumulate.
        if (gap < -1) {
            throw new IllegalArgumentException("block.start (" + block.start() + ") must not lie before " + end());
        }
        if (failed) {
            return;
        }
        try {
            if (gap > 1) {
                writeSilence(gap);
            }
            write(block.samples());
        } catch (IOException e) {
            failed = true;
            keepWhatIsThere();
            throw DiskProblems.writing(path, e);
        } catch (ProblemException e) {
            failed = true;
            throw e;
        }
    }

    /**
     * Corrects the header's sizes and forces the file to disk; takes some 10 to 30 ms. Call it once a second, from a
     * thread that may wait. Does nothing after {@link #close}.
     *
     * @throws ProblemException the first time that it fails; later calls still try
     */
    public void sync() throws ProblemException {
        synchronized (syncing) {
            if (closed) {
                return;
            }
            try {
                WavHeader.patch(header, data);
                opener.force(header);
            } catch (IOException e) {
                if (!syncFailed) {
                    syncFailed = true;
                    throw DiskProblems.writing(path, e);
                }
            }
        }
    }

    /**
     * Ends the file; calling it again does nothing.
     *
     * @throws ProblemException if the end could not be forced to disk and no failure was reported before
     */
    @Override
    public void close() throws ProblemException {
        synchronized (syncing) {
            try (samples;
                    header) {
                sync();
            } catch (IOException e) {
                throw DiskProblems.writing(path, e);
            } finally {
                closed = true;
            }
        }
    }

    private void write(short[] block) throws IOException, ProblemException {
        for (short sample : block) {
            buffer.putShort(sample);
            if (!buffer.hasRemaining()) {
                flush();
            }
        }
        flush();
    }

    private void writeSilence(long gap) throws IOException, ProblemException {
        for (long i = 0; i < gap; i++) {
            buffer.putShort((short) 0);
            if (!buffer.hasRemaining()) {
                flush();
            }
        }
        flush();
    }

    private void flush() throws IOException, ProblemException {
        long before = data;
        int fits = (int) Math.min(buffer.position(), maxData - before);
        boolean full = fits < buffer.position();
        buffer.clear();
        samples.write(buffer.array(), 0, fits);
        data = before + fits;
        if (full) {
            throw new ProblemException(
                    String.format(
                            Locale.ROOT,
                            "the take has reached %.1f hours, all that a WAV file can hold",
                            data / (3600.0 * rate * WavHeader.BYTES_PER_SAMPLE)),
                    path.toString(),
                    "cut, and roll the next take");
        }
    }

    /** A write that failed half-way may have written some samples: counts them, and drops a half-written one. */
    private void keepWhatIsThere() {
        buffer.clear();
        try {
            long whole = WavHeader.wholeSamples(samples.length()) * WavHeader.BYTES_PER_SAMPLE;
            samples.setLength(WavHeader.BYTES + whole);
            data = whole;
        } catch (IOException e) {
            // The failure is being reported; the sizes are corrected when the session is opened again.
        }
    }
}
