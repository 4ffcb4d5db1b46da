package org.bookholder.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.wav.WavHeader;

/**
 * A take's file as it would be if the recording ended now. While a take is recorded, the sizes in its header lag
 * behind; here they are correct.
 *
 * @param path the file
 * @param length its length in bytes, the half-written last sample left out
 * @param rate samples per second
 */
public record TakeFile(Path path, long length, int rate) {
    /** Whether there is a file with any sample in it. */
    public static boolean holdsSound(Path path) {
        return WavHeader.wholeSamples(path.toFile().length()) > 0;
    }

    /**
     * Opens a take's file.
     *
     * @throws ProblemException if it cannot be read or is not a take's
     */
    public static TakeFile of(Path path) throws ProblemException {
        try (FileChannel file = FileChannel.open(path)) {
            Optional<Integer> rate = WavHeader.rate(file);
            if (rate.isEmpty()) {
                throw new ProblemException(
                        "is not the recording of a take", path.toString(), "put the file back as Bookholder wrote it");
            }
            long samples = WavHeader.wholeSamples(file.size());
            return new TakeFile(path, WavHeader.BYTES + samples * WavHeader.BYTES_PER_SAMPLE, rate.get());
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
    }

    /**
     * Some of its bytes.
     *
     * @param from the first one, from 0
     * @param count how many, within {@link #length}
     */
    public ByteBuffer read(long from, int count) throws ProblemException {
        ByteBuffer bytes = ByteBuffer.allocate(count);
        byte[] header = WavHeader.of(rate, length - WavHeader.BYTES);
        while (bytes.hasRemaining() && from + bytes.position() < header.length) {
            bytes.put(header[(int) (from + bytes.position())]);
        }
        try (FileChannel file = FileChannel.open(path)) {
            while (bytes.hasRemaining() && file.read(bytes, from + bytes.position()) >= 0) {
                // A read may return less than was asked for.
            }
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
        return bytes.flip();
    }
}
