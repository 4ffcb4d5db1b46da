package org.bookholder.footage;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ShortBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;

/**
 * Sound kept in a temporary file, so that hours of it need no memory.
 *
 * <p>Confined to one thread. The file is deleted when this is closed, when the program is interrupted, or after a kill by the next run.
 */
public final class StoredTrack implements SoundTrack, AutoCloseable {
    private static final float FULL_SCALE = 32_768;

    private final RunFolder folder;
    private final ShortBuffer samples;

    private StoredTrack(RunFolder folder, ShortBuffer samples) {
        this.folder = folder;
        this.samples = samples;
    }

    /** Where sound comes from, piece by piece. */
    @FunctionalInterface
    public interface Source {
        /**
         * The samples that come next, at {@link SoundTrack#RATE}; empty at the end.
         *
         * @throws ProblemException if they cannot be read
         */
        Optional<short[]> read() throws ProblemException;
    }

    /**
     * Stores all that a source gives.
     *
     * @throws ProblemException if the source cannot be read, or there is no room for temporary files
     */
    public static StoredTrack of(Source source) throws ProblemException {
        try {
            RunFolder folder = RunFolder.temporary();
            Path file = folder.path().resolve("sound");
            file.toFile().deleteOnExit();
            try {
                write(file, source);
                try (FileChannel channel = FileChannel.open(file)) {
                    ShortBuffer samples =
                            channel.map(MapMode.READ_ONLY, 0, channel.size()).asShortBuffer();
                    return new StoredTrack(folder, samples);
                }
            } catch (IOException | ProblemException | RuntimeException e) {
                folder.close();
                throw e;
            }
        } catch (IOException e) {
            throw ProblemException.noTemporaryRoom(e);
        }
    }

    private static void write(Path file, Source source) throws IOException, ProblemException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file));
                DataOutputStream data = new DataOutputStream(out)) {
            for (Optional<short[]> piece = source.read(); piece.isPresent(); piece = source.read()) {
                for (short sample : piece.get()) {
                    data.writeShort(sample);
                }
            }
        }
    }

    @Override
    public long length() {
        return samples.limit();
    }

    @Override
    public float[] read(long from, int count) {
        float[] piece = new float[count];
        int first = (int) Math.max(0, -from);
        int beyond = (int) Math.min(count, length() - from);
        for (int i = first; i < beyond; i++) {
            piece[i] = samples.get((int) (from + i)) / FULL_SCALE;
        }
        return piece;
    }

    @Override
    public void close() {
        try {
            folder.close();
        } catch (IOException e) {
            // The next run deletes it.
        }
    }
}
