package org.bookholder.speech.wav;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;

/**
 * A WAV file as an audio source: any rate from 8 to 192 kHz, any number of channels (mixed to one in equal parts),
 * integer samples of 8 to 32 bit, floating-point samples of 32 and 64 bit.
 *
 * <p>Reads blocks of 40 ms, never the whole file. A recording that was never closed, or is cut short, is read as far as
 * it goes; {@link #warnings()} says so.
 */
public final class WavSource implements AudioSource {
    private static final int BLOCKS_PER_SECOND = 25;

    private final RandomAccessFile file;
    private final String name;
    private final WavDescription description;
    private final ByteBuffer buffer;
    private long framesRead;
    private boolean keepsSides;
    private boolean closed;

    private WavSource(RandomAccessFile file, String name, WavDescription description) {
        this.file = file;
        this.name = name;
        this.description = description;
        this.buffer = ByteBuffer.allocate(description.rate() / BLOCKS_PER_SECOND * description.frameBytes())
                .order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * Opens a file.
     *
     * @throws ProblemException if there is no such file, it is not a readable WAV file, or it holds no sound
     */
    public static WavSource open(Path path) throws ProblemException {
        RandomAccessFile file = file(path);
        try {
            WavDescription description = new WavParser(file, path.toString()).parse();
            file.seek(description.dataStart());
            return new WavSource(file, path.toFile().getName(), description);
        } catch (IOException e) {
            closeQuietly(file);
            throw new ProblemException("the file cannot be read", path.toString(), "check the disk it is on", e);
        } catch (ProblemException e) {
            closeQuietly(file);
            throw e;
        }
    }

    private static RandomAccessFile file(Path path) throws ProblemException {
        if (Files.isDirectory(path)) {
            throw new ProblemException("this is a folder", path.toString(), "give a WAV file");
        }
        try {
            return new RandomAccessFile(path.toFile(), "r");
        } catch (FileNotFoundException e) {
            if (Files.exists(path)) {
                throw new ProblemException("the file may not be read", path.toString(), "check its permissions", e);
            }
            throw new ProblemException("there is no such file", path.toString(), "check the name", e);
        }
    }

    /** From now on the blocks of a file with two channels keep both, {@link AudioBlock#sides}. */
    public void keepSides() {
        keepsSides = true;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int rate() {
        return description.rate();
    }

    /** Duration of the file's sound. */
    public StreamTime length() {
        return StreamTime.ofSamples(description.frames(), description.rate());
    }

    /** What is wrong with the file although it can be read: one phrase each, shown to the user; usually empty. */
    public List<String> warnings() {
        return description.warnings();
    }

    @Override
    public AudioRead read() {
        if (closed) {
            throw new IllegalStateException("source is closed");
        }
        int frameBytes = description.frameBytes();
        int frames = (int) Math.min(buffer.capacity() / frameBytes, description.frames() - framesRead);
        if (frames == 0) {
            return new AudioRead.Ended();
        }
        try {
            file.readFully(buffer.array(), 0, frames * frameBytes);
        } catch (IOException e) {
            return new AudioRead.Gone("the file can no longer be read");
        }
        StreamTime start = StreamTime.ofSamples(framesRead, description.rate());
        framesRead += frames;
        return new AudioRead.Samples(
                keepsSides && description.channels() == 2 ? sides(start, frames) : mixed(start, frames));
    }

    private AudioBlock mixed(StreamTime start, int frames) {
        short[] samples = new short[frames];
        for (int i = 0; i < frames; i++) {
            samples[i] = description.format().mixed(buffer, i * description.frameBytes(), description.channels());
        }
        return new AudioBlock(start, description.rate(), samples);
    }

    private AudioBlock sides(StreamTime start, int frames) {
        short[] left = new short[frames];
        short[] right = new short[frames];
        for (int i = 0; i < frames; i++) {
            left[i] = description.format().channel(buffer, i * description.frameBytes(), 0);
            right[i] = description.format().channel(buffer, i * description.frameBytes(), 1);
        }
        return AudioBlock.ofSides(start, description.rate(), left, right);
    }

    @Override
    public void close() {
        closed = true;
        closeQuietly(file);
    }

    /** Closes a file that was only read. A failure loses no data, so it can only be a programmer's error. */
    private static void closeQuietly(RandomAccessFile file) {
        try {
            file.close();
        } catch (IOException e) {
            throw new UncheckedIOException("a file opened for reading cannot be closed", e);
        }
    }
}
