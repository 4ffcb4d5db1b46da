package org.bookholder.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.SettingsText.Values;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SettingsFileTest {
    private static final Form<String> FORM = new Form<>(
            "setting", List.of(new Field<>("name", "", Setting::text), new Field<>("size", "", Setting::text)));

    @TempDir
    private Path folder;

    private SettingsFile file;

    @BeforeEach
    void nameAFile() {
        file = new SettingsFile(folder.resolve("settings/mine.txt"), "the settings");
    }

    @Test
    void nothingIsSetWithoutAFile() throws ProblemException {
        assertThat(file.read(FORM).values()).isEmpty();
        assertThat(file.path()).doesNotExist();
    }

    @Test
    void changesCanBeReadBackAndAreForTheOwnerOnly() throws ProblemException, IOException {
        file.change(FORM, Map.of("name", "[a]", "size", "3"), Set.of());
        file.change(FORM, Map.of("name", "b"), Set.of("size"));
        assertThat(file.read(FORM).values()).containsExactly(Map.entry("name", "b"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file.path())))
                .isEqualTo("rw-------");
        assertThat(PosixFilePermissions.toString(
                        Files.getPosixFilePermissions(file.path().getParent())))
                .isEqualTo("rwx------");
    }

    @Test
    void aFileOfAnEarlierVersionIsRewrittenOnce() throws ProblemException, IOException {
        write("# mine\nname: [a-z]+ # letters\nwidth: 3\n");
        assertThat(file.read(FORM).values()).containsExactly(Map.entry("name", "[a-z]+"));
        assertThat(file.path()).hasContent("# mine\nname: '[a-z]+' # letters\nwidth: 3\n");
        Object before = Files.readAttributes(file.path(), "unix:ino").get("ino");
        assertThat(file.read(FORM).values()).containsExactly(Map.entry("name", "[a-z]+"));
        assertThat(Files.readAttributes(file.path(), "unix:ino").get("ino")).isEqualTo(before);
    }

    @Test
    void aFileThatAPersonNamedIsLeftAsItIs() throws ProblemException, IOException {
        write("name: [a-z]+ # letters\n");
        assertThat(file.readOnly(FORM).values()).containsExactly(Map.entry("name", "[a-z]+"));
        assertThat(file.path()).hasContent("name: [a-z]+ # letters\n");
    }

    @Test
    void invalidBytesAffectOnlyTheirLineAndAreNotOverwritten() throws ProblemException, IOException {
        byte[] damaged = "name: [a]+\nsize: \u00e9\n".getBytes(StandardCharsets.ISO_8859_1);
        Files.createDirectories(file.path().getParent());
        Files.write(file.path(), damaged);
        Values<String> values = file.read(FORM);
        assertThat(values.values()).containsExactly(Map.entry("name", "[a]+"));
        assertThat(values.wrong())
                .extracting(ProblemException::getMessage)
                .containsExactly(file.path() + ":2: this line is not UTF-8 text; write it anew and save as UTF-8");
        assertThatThrownBy(() -> file.change(FORM, Map.of("name", "b"), Set.of()))
                .hasMessage(file.path() + ": this is not UTF-8 text; save it as UTF-8");
        assertThat(file.path()).hasBinaryContent(damaged);
    }

    @Test
    void aFolderInPlaceOfTheFileIsReported() throws IOException {
        Files.createDirectories(file.path());
        assertThatThrownBy(() -> file.read(FORM))
                .hasMessage(
                        file.path() + ": the settings cannot be read; make it a file that you may read, or remove it");
    }

    private void write(String text) throws IOException {
        Files.createDirectories(file.path().getParent());
        Files.writeString(file.path(), text);
    }

    @Test
    void aFileFarLargerThanSettingsIsNotRead() throws IOException {
        Files.createDirectories(file.path().getParent());
        Files.write(file.path(), new byte[(int) SettingsFile.MOST_BYTES + 1]);

        assertThatThrownBy(() -> file.read(FORM))
                .hasMessage(file.path() + ": the settings cannot be read (over 1 MB);"
                        + " make it a file of settings, or remove it");
    }

    @Test
    void brokenListsAreTriedLineByLineAndNotEachWithAllBelowIt() throws IOException, ProblemException {
        Files.createDirectories(file.path().getParent());
        Files.writeString(file.path(), "  - [\n".repeat(3_000) + "size: 3\n");

        Values<String> read = file.readOnly(FORM);

        assertThat(read.values()).containsEntry("size", "3");
        assertThat(read.wrong()).hasSize(3_000);
    }
}
