package org.bookholder.files;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Gives a finished file a name that no other file has, so that nothing is replaced. */
public final class UnusedName {
    private static final int MOST = 10_000;

    private UnusedName() {}

    /**
     * Moves a finished file to the name that is wanted or, if that is taken, to the first free one with a number: {@code
     * lesson-2.mp4}. Both lie on one disk.
     *
     * @return the name that it got
     * @throws IOException if it cannot be moved; then it stays where it was
     */
    public static Path move(Path finished, Path wanted) throws IOException {
        for (int number = 1; number <= MOST; number++) {
            Path name = number == 1 ? wanted : numbered(wanted, number);
            if (Files.exists(name)) {
                continue;
            }
            try {
                // A second name is refused if another file has it, also one that came this moment.
                Files.createLink(name, finished);
                Files.delete(finished);
                return name;
            } catch (FileAlreadyExistsException e) {
                // The next number may be free.
            } catch (UnsupportedOperationException | FileSystemException e) {
                // FAT, and some network shares, have no second names.
                return Files.move(finished, name);
            }
        }
        throw new IOException("there are too many files of that name");
    }

    private static Path numbered(Path wanted, int number) {
        String name = String.valueOf(wanted.getFileName());
        String stem = FileNames.stem(wanted);
        return wanted.resolveSibling(stem + "-" + number + name.substring(stem.length()));
    }
}
