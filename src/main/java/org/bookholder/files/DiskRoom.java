package org.bookholder.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.bookholder.problem.ProblemException;

/** Whether there is room in a folder. */
public final class DiskRoom {
    private static final int TRIED = 1 << 20;

    private DiskRoom() {}

    /**
     * Checks that a folder takes files, by what its disk says and by writing a megabyte into it: a quota, or a disk that has room but
     * takes no more files, shows only so.
     *
     * @param least what its disk must have. Bytes
     * @throws ProblemException if it has not, or nothing can be written
     */
    public static void check(Path folder, long least) throws ProblemException {
        try {
            if (free(folder) < least) {
                throw new ProblemException("the disk is full", folder.toString(), "free some space");
            }
            write(folder.resolve("room.part"));
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
    }

    /**
     * How much more a folder that is there takes, in bytes. The platform's own file stores are looked up in the list of what is mounted, and
     * below a changed root that list may lack the root.
     */
    public static long free(Path folder) {
        return folder.toFile().getUsableSpace();
    }

    private static void write(Path file) throws IOException {
        byte[] bytes = new byte[TRIED];
        // Some file systems store a run of zeros in no room at all.
        new Random(TRIED).nextBytes(bytes);
        Files.deleteIfExists(file);
        try (FileChannel channel = PrivateFiles.create(file)) {
            ByteBuffer rest = ByteBuffer.wrap(bytes);
            while (rest.hasRemaining()) {
                channel.write(rest);
            }
        } finally {
            Files.deleteIfExists(file);
        }
    }
}
