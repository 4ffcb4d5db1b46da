package org.bookholder.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
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
            removeEmpty(file);
            throw DiskProblems.writing(file, e);
        }
    }

    /** A file that could not be begun is removed, so that another attempt finds the name free. */
    private static void removeEmpty(Path file) {
        try {
            if (file.toFile().length() <= WavHeader.BYTES) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            // The failure to begin it is being reported.
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
     * @throws ProblemException if the file takes no more (disk full, or longer than a WAV file can be); then nothing of the
     *     block is in the file, and it may be appended again
     */
    public void append(AudioBlock block) throws ProblemException {
        if (block.rate() != rate) {
            throw new IllegalArgumentException("block.rate (" + block.rate() + ") must be " + rate);
        }
        long before = data;
        long gap = block.start().since(takeStart).samples(rate) - before / WavHeader.BYTES_PER_SAMPLE;
        // At rates that do not divide 48,000, a time is off by up to one sample. That is not a gap, and it does not
        // accumulate.
        if (gap < -1) {
            throw new IllegalArgumentException("block.start (" + block.start() + ") must not lie before " + end());
        }
        try {
            if (gap > 1) {
                leaveSilence(gap);
            }
            samples.seek(WavHeader.BYTES + data);
            write(block.samples());
        } catch (IOException e) {
            takeBack(before);
            throw DiskProblems.writing(path, e);
        } catch (ProblemException e) {
            takeBack(before);
            throw e;
        }
    }

    /**
     * Corrects the header's sizes and forces the file to disk; takes some 10 to 30 ms. Call it once a second, from a
     * thread that may wait. Does nothing after {@link #close}.
     *
     * @throws ProblemException if it fails, or if the file is no longer in its place; later calls still try
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
                throw DiskProblems.writing(path, e);
            }
            if (!Files.exists(path)) {
                throw new ProblemException(
                        "is gone", path.toString(), "put it back; until then nothing that is written can be found");
            }
        }
    }

    /**
     * Ends the file; calling it again does nothing.
     *
     * @throws ProblemException if the end could not be forced to disk
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

    /** A hole, which reads as silence and takes no room on most disks: there may be little of it after a full one. */
    private void leaveSilence(long gap) throws IOException, ProblemException {
        long end = data + gap * WavHeader.BYTES_PER_SAMPLE;
        if (end > maxData) {
            throw full();
        }
        samples.setLength(WavHeader.BYTES + end);
        data = end;
    }

    private void flush() throws IOException, ProblemException {
        long before = data;
        int fits = (int) Math.min(buffer.position(), maxData - before);
        boolean full = fits < buffer.position();
        buffer.clear();
        samples.write(buffer.array(), 0, fits);
        data = before + fits;
        if (full) {
            throw full();
        }
    }

    private ProblemException full() {
        return new ProblemException(
                String.format(
                        Locale.ROOT,
                        "the take has reached %.1f hours, all that a WAV file can hold",
                        maxData / (3600.0 * rate * WavHeader.BYTES_PER_SAMPLE)),
                path.toString(),
                "cut, and roll the next take");
    }

    /** Drops what a write that failed half-way has left, so that the file ends with a whole block. */
    private void takeBack(long before) {
        buffer.clear();
        data = before;
        try {
            samples.setLength(WavHeader.BYTES + before);
        } catch (IOException e) {
            // The failure is being reported; the next write begins at the same place.
        }
    }
}
