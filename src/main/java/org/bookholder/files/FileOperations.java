package org.bookholder.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;

/** The steps of writing a file. {@link Disk} performs them; tests pass in others to make a step fail. */
public interface FileOperations {
    /** Creates a file that does not exist yet; its permissions are set before anything is written. */
    OutputStream create(Path file, Access access) throws IOException;

    /** Returns when the file's content has reached the disk. */
    void force(Path file) throws IOException;

    /** Keeps the file's current content under a second name. */
    void keepAs(Path file, Path second) throws IOException;

    /** Renames a file, replacing an existing one; in a single step if the file system can. */
    void move(Path from, Path to) throws IOException;

    /** Returns when the names in the folder have reached the disk; does nothing where the system cannot force a folder. */
    void forceFolder(Path folder) throws IOException;

    /** Removes a file if it exists. */
    void delete(Path file) throws IOException;
}
