package org.bookholder.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** File operations on the machine's file system. */
public final class Disk implements FileOperations {
    @Override
    public OutputStream create(Path file, Access access) throws IOException {
        return Channels.newOutputStream(
                access == Access.OWNER
                        ? PrivateFiles.create(file)
                        : FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE));
    }

    @Override
    public void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    @Override
    public void keepAs(Path file, Path second) throws IOException {
        try {
            Files.createLink(second, file);
        } catch (UnsupportedOperationException | IOException e) {
            // FAT, and some network shares, have no hard links.
            Files.copy(file, second, StandardCopyOption.COPY_ATTRIBUTES);
        }
    }

    @Override
    public void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    @Override
    public void forceFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Windows cannot open a folder as a file, and some network file systems cannot force one.
        }
    }

    @Override
    public void delete(Path file) throws IOException {
        Files.deleteIfExists(file);
    }
}
