package org.bookholder.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.timing.StreamTime;

/**
 * Reads a take's audio, even while it is being written. The file's length says how much there is, since the sizes in
 * the header lag behind. Confined to one thread; a file may be opened any number of times.
 */
public final class TakeAudio implements AutoCloseable {
    /** The most that one call returns, in seconds, so that a wrong range cannot fill the memory. */
    public static final int MAX_SECONDS = 300;

    private final Path path;
    private final StreamTime takeStart;
    private final FileChannel file;
    private final int rate;
    private long next;

    private TakeAudio(Path path, StreamTime takeStart, FileChannel file, int rate) {
        this.path = path;
        this.takeStart = takeStart;
        this.file = file;
        this.rate = rate;
    }

    /**
     * Opens a take.
     *
     * @param path the take's file
     * @param takeStart when the take's first sample sounds, on the session's audio
     * @throws ProblemException if the file cannot be read or is not a take's
     */
    public static TakeAudio open(Path path, StreamTime takeStart) throws ProblemException {
        try {
            FileChannel file = FileChannel.open(path);
            Optional<Integer> rate = WavHeader.rate(file);
            if (rate.isEmpty()) {
                file.close();
                throw new ProblemException(
                        "is not the recording of a take",
                        path.toString(),
                        "put the file back as Bookholder wrote it, one channel of 16 bit");
            }
            return new TakeAudio(path, takeStart, file, rate.get());
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
    }

    /** Samples per second. */
    public int rate() {
        return rate;
    }

    /** End of the last sample on disk, in session time. */
    public StreamTime end() throws ProblemException {
        return takeStart.plus(StreamTime.ofSamples(samplesOnDisk(), rate));
    }

    /**
     * Reads the next samples, starting with the take's first.
     *
     * @param maxSamples the most samples to take, 1 or more
     * @return the samples that follow those taken before; empty if there are none yet
     * @throws ProblemException if the file cannot be read
     */
    public Optional<AudioBlock> read(int maxSamples) throws ProblemException {
        if (maxSamples < 1) {
            throw new IllegalArgumentException("maxSamples (" + maxSamples + ") must be 1 or more");
        }
        Optional<AudioBlock> block = read(next, next + maxSamples);
        block.ifPresent(b -> next += b.samples().length);
        return block;
    }

    /**
     * Reads a stretch, without changing what {@link #read(int)} returns next.
     *
     * @param from session time of the first sample
     * @param to session time after the last one
     * @return the part of it that is on disk, {@value #MAX_SECONDS} s at most; empty if none is
     * @throws ProblemException if the file cannot be read
     */
    public Optional<AudioBlock> read(StreamTime from, StreamTime to) throws ProblemException {
        return read(from.since(takeStart).samples(rate), to.since(takeStart).samples(rate));
    }

    /**
     * Reads from a sample on, without changing what {@link #read(int)} returns next.
     *
     * @param first the first sample, counted from the take's first, which is 0
     * @param maxSamples the most samples to take, 1 or more
     * @return the part of it that is on disk; empty if none is
     * @throws ProblemException if the file cannot be read
     */
    public Optional<AudioBlock> readFrom(long first, int maxSamples) throws ProblemException {
        return read(first, first + maxSamples);
    }

    /** Closes the file. */
    @Override
    public void close() {
        try {
            file.close();
        } catch (IOException e) {
            // Only read from, so nothing can be lost.
        }
    }

    private Optional<AudioBlock> read(long first, long beyond) throws ProblemException {
        long end = Math.min(Math.min(beyond, samplesOnDisk()), first + (long) MAX_SECONDS * rate);
        if (end <= first) {
            return Optional.empty();
        }
        ByteBuffer bytes = ByteBuffer.allocate((int) (end - first) * WavHeader.BYTES_PER_SAMPLE)
                .order(ByteOrder.LITTLE_ENDIAN);
        long from = WavHeader.BYTES + first * WavHeader.BYTES_PER_SAMPLE;
        try {
            while (bytes.hasRemaining() && file.read(bytes, from + bytes.position()) >= 0) {
                // A read may return less than was asked for.
            }
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
        short[] samples = new short[bytes.position() / WavHeader.BYTES_PER_SAMPLE];
        if (samples.length == 0) {
            return Optional.empty();
        }
        bytes.flip().asShortBuffer().get(samples);
        return Optional.of(new AudioBlock(takeStart.plus(StreamTime.ofSamples(first, rate)), rate, samples));
    }

    private long samplesOnDisk() throws ProblemException {
        try {
            return WavHeader.wholeSamples(file.size());
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
    }
}
