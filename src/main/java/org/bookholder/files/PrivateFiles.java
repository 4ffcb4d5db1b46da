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
 * Makes files and folders that only their owner may read: mode 600 and 700 on POSIX systems, an access list with the
 * owner as its one entry on Windows. Where a file system knows no owners (FAT), they are as readable as all else there.
 */
public final class PrivateFiles {
    private PrivateFiles() {}

    /**
     * Creates a folder and the folders above it that are missing. One that is there keeps its permissions.
     *
     * @return the folder
     * @throws IOException if one cannot be created, or a file has its name
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
     * Creates the folder that a file is to lie in, as {@link #createFolder} does.
     *
     * @throws IOException if it cannot be created, or a file has its name
     */
    public static void createFolderFor(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            createFolder(folder);
        }
    }

    /**
     * Creates an empty file for those who write it piece by piece. One that is there is left as it is.
     *
     * @throws IOException if it cannot be created
     */
    public static void createIfMissing(Path file) throws IOException {
        try {
            create(file).close();
        } catch (FileAlreadyExistsException e) {
            // It is there, as asked for.
        }
    }

    /** Creates a file that is not there yet, and opens it for writing. */
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

    /** Leaves the owner as the only one in an access list; without effect where the file system refuses. */
    static void restrict(AclFileAttributeView list, Set<AclEntryFlag> inheritance) {
        try {
            list.setAcl(List.of(AclEntry.newBuilder()
                    .setType(AclEntryType.ALLOW)
                    .setPrincipal(list.getOwner())
                    .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                    .setFlags(inheritance)
                    .build()));
        } catch (IOException e) {
            // A share may not let its access lists be changed; the file is then as private as its folder.
        }
    }
}
