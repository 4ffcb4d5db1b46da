package org.bookholder.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryFlag;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PrivateFilesTest {
    @TempDir
    private Path parent;

    @Test
    void onlyTheOwnerMayEnterANewFolder() throws IOException {
        Path folder = PrivateFiles.createFolder(parent.resolve("a/b"));
        assertThat(permissions(folder)).isEqualTo("rwx------");
        assertThat(permissions(parent.resolve("a"))).isEqualTo("rwx------");
    }

    @Test
    void anExistingFolderKeepsItsPermissions() throws IOException {
        Path folder = Files.createDirectory(parent.resolve("shared"));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxrwxr-x"));
        Path link = Files.createSymbolicLink(parent.resolve("link"), folder);
        PrivateFiles.createFolder(link);
        PrivateFiles.createFolder(folder);
        assertThat(permissions(folder)).isEqualTo("rwxrwxr-x");
    }

    @Test
    void refusesAFolderIfAFileHasItsName() throws IOException {
        Path file = Files.createFile(parent.resolve("file"));
        assertThatThrownBy(() -> PrivateFiles.createFolder(file)).isInstanceOf(FileAlreadyExistsException.class);
        assertThatThrownBy(() -> PrivateFiles.createFolder(file.resolve("below")))
                .isInstanceOf(FileAlreadyExistsException.class);
    }

    @Test
    void onlyTheOwnerMayReadANewFile() throws IOException {
        Path file = parent.resolve("take.wav");
        PrivateFiles.createIfMissing(file);
        assertThat(permissions(file)).isEqualTo("rw-------");
        assertThat(file).isEmptyFile();
    }

    @Test
    void anExistingFileIsLeftAsItIs() throws IOException {
        Path file = Files.writeString(parent.resolve("take.wav"), "sound");
        PrivateFiles.createIfMissing(file);
        assertThat(file).hasContent("sound");
    }

    @Test
    void anAccessListNamesTheOwnerAlone() {
        AccessList list = new AccessList(false);
        PrivateFiles.restrict(list, EnumSet.of(AclEntryFlag.FILE_INHERIT));
        assertThat(list.entries).singleElement().satisfies(entry -> {
            assertThat(entry.type()).isEqualTo(AclEntryType.ALLOW);
            assertThat(entry.principal().getName()).isEqualTo("owner");
            assertThat(entry.permissions()).containsExactlyInAnyOrder(AclEntryPermission.values());
            assertThat(entry.flags()).containsExactly(AclEntryFlag.FILE_INHERIT);
        });
    }

    @Test
    void anAccessListThatCannotBeChangedStopsNothing() {
        AccessList list = new AccessList(true);
        PrivateFiles.restrict(list, EnumSet.noneOf(AclEntryFlag.class));
        assertThat(list.entries).isEmpty();
    }

    private static String permissions(Path file) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
    }

    /** An access list in memory, as Windows has them. */
    private static final class AccessList implements AclFileAttributeView {
        private final boolean readOnly;
        private List<AclEntry> entries = List.of();

        AccessList(boolean readOnly) {
            this.readOnly = readOnly;
        }

        @Override
        public String name() {
            return "acl";
        }

        @Override
        public List<AclEntry> getAcl() {
            return entries;
        }

        @Override
        public void setAcl(List<AclEntry> list) throws IOException {
            if (readOnly) {
                throw new IOException("the list is read-only");
            }
            entries = list;
        }

        @Override
        public UserPrincipal getOwner() {
            return () -> "owner";
        }

        @Override
        public void setOwner(UserPrincipal owner) {
            throw new UnsupportedOperationException();
        }
    }
}
