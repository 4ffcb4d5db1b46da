package org.bookholder.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryFlag;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Creates files and folders that only their owner can read: mode 600 and 700 on POSIX systems, an access list with the
 * owner as its only entry on Windows. On a file system without owners (FAT), everyone can read them.
 */
public final class PrivateFiles {
    private PrivateFiles() {}

    /**
     * Creates a folder and any missing folders above it. An existing folder keeps its permissions.
     *
     * @return the folder
     * @throws IOException if one cannot be created, or a file with that name exists
     */
    public static Path createFolder(Path folder) throws IOException {
        // createDirectories refuses a symbolic link to a folder.
        if (Files.isDirectory(folder)) {
            return folder;
        }
        Path parent = folder.toAbsolutePath().getParent();
        if (parent != null) {
            createFolder(parent);
        }
        try {
            Files.createDirectory(folder, attributes(folder, "rwx------"));
        } catch (FileAlreadyExistsException e) {
            if (!Files.isDirectory(folder)) {
                throw e;
            }
            return folder;
        }
        restrict(folder, EnumSet.of(AclEntryFlag.FILE_INHERIT, AclEntryFlag.DIRECTORY_INHERIT));
        return folder;
    }

    /**
     * Creates the folder for a file, as {@link #createFolder} does.
     *
     * @throws IOException if it cannot be created, or a file with that name exists
     */
    public static void createFolderFor(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            createFolder(folder);
        }
    }

    /**
     * Creates an empty file that will be written piece by piece. An existing file is left as it is.
     *
     * @throws IOException if it cannot be created
     */
    public static void createIfMissing(Path file) throws IOException {
        try {
            create(file).close();
        } catch (FileAlreadyExistsException e) {
            // It exists already.
        }
    }

    /**
     * Copies a file to one that is not there yet, and forces the copy to disk.
     *
     * @throws IOException if that fails; a part of the copy may then be there
     */
    public static void copy(Path file, Path copy) throws IOException {
        try (FileChannel from = FileChannel.open(file);
                FileChannel to = create(copy)) {
            long at = 0;
            while (at < from.size()) {
                at += from.transferTo(at, from.size() - at, to);
            }
            to.force(true);
        }
    }

    /** Creates a file that must not exist yet, and opens it for writing. */
    static FileChannel create(Path file) throws IOException {
        FileChannel channel = FileChannel.open(
                file, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), attributes(file, "rw-------"));
        restrict(file, EnumSet.noneOf(AclEntryFlag.class));
        return channel;
    }

    private static FileAttribute<?>[] attributes(Path file, String permissions) {
        return file.getFileSystem().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }

    private static void restrict(Path file, Set<AclEntryFlag> inheritance) {
        @Nullable AclFileAttributeView list = Files.getFileAttributeView(file, AclFileAttributeView.class);
        if (list != null) {
            restrict(list, inheritance);
        }
    }

    /** Makes the owner the only entry of an access list; has no effect if the file system refuses. */
    static void restrict(AclFileAttributeView list, Set<AclEntryFlag> inheritance) {
        try {
            list.setAcl(List.of(AclEntry.newBuilder()
                    .setType(AclEntryType.ALLOW)
                    .setPrincipal(list.getOwner())
                    .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                    .setFlags(inheritance)
                    .build()));
        } catch (IOException e) {
            // A network share may refuse changes to access lists; the file is then as private as its folder.
        }
    }
}
