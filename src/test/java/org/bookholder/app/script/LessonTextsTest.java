package org.bookholder.app.script;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.FailingDisk;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class LessonTextsTest {
    @TempDir
    private Path folder;

    private Path file;
    private LessonTexts texts;

    @BeforeEach
    void write() throws IOException {
        file = Files.writeString(folder.resolve("lesson.md"), "One.\n");
        texts = new LessonTexts(StoredExamples.here(folder));
    }

    @Test
    void aTextIsSavedOverWhatItWasMadeFromOnly() throws Exception {
        String revision = texts.read(file).revision();
        Optional<LessonText> saved = texts.save(file, "One.\nTwo.\n", revision);
        assertThat(saved).map(LessonText::text).contains("One.\nTwo.\n");

        assertThat(texts.save(file, "Three.\n", revision)).isEmpty();
        assertThat(file).content().isEqualTo("One.\nTwo.\n");
        assertThat(texts.save(folder.resolve("new.md"), "New.\n", revision)).isEmpty();
        assertThat(texts.save(folder.resolve("new.md"), "New.\n", "")).isPresent();
        assertThat(texts.save(folder.resolve("new.md"), "Newer.\n", "")).isEmpty();
    }

    @Test
    void theOtherTextIsKeptWhereOneIsSavedOverIt() throws Exception {
        Path kept = texts.saveOver(file, "Mine.\n");
        assertThat(file).content().isEqualTo("Mine.\n");
        assertThat(kept).content().isEqualTo("One.\n");
        Path second = texts.keep(file, "Also mine.\n");
        assertThat(second).isNotEqualTo(kept).content().isEqualTo("Also mine.\n");
        assertThat(file).content().isEqualTo("Mine.\n");
    }

    @Test
    void encodingLineEndsAndPermissionsStay() throws Exception {
        Files.write(file, "\ufeffOne é.\r\nTwo.\r\n".getBytes(StandardCharsets.UTF_16LE));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));
        LessonText read = texts.read(file);
        assertThat(read.text()).isEqualTo("One é.\nTwo.\n");

        texts.save(file, "One é.\nTwo.\nThree.\n", read.revision());

        assertThat(Files.readString(file, StandardCharsets.UTF_16LE)).isEqualTo("\ufeffOne é.\r\nTwo.\r\nThree.\r\n");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-rw----");
    }

    @Test
    void filesBesideAPrivateScriptArePrivateToo() throws Exception {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        Path other = texts.saveOver(file, "Mine.\n");
        Path second = texts.keep(file, "Also mine.\n");
        for (Path each : List.of(file, other, second)) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(each)))
                    .isEqualTo("rw-------");
        }
    }

    @Test
    void aDiskThatFailsLeavesTheFileAsItWas() throws Exception {
        FailingDisk disk = new FailingDisk(step -> step.startsWith("write"));
        LessonTexts failing = new LessonTexts(StoredExamples.here(folder), new AtomicFiles(disk, Access.KEPT));
        String revision = failing.read(file).revision();
        assertThatThrownBy(() -> failing.save(file, "Two.\n", revision)).isInstanceOf(ProblemException.class);
        assertThat(file).content().isEqualTo("One.\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\u0000b", "a\u0007b", "a\ud800b", "a\udc00"})
    void charactersThatNoTextFileHasAreRefusedWithTheirLine(String text) throws Exception {
        String revision = texts.read(file).revision();
        assertThatThrownBy(() -> texts.save(file, "One.\n" + text, revision))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("lesson.md:2: a character that is no text");
        assertThat(file).content().isEqualTo("One.\n");
    }

    @Test
    void aDocumentBecomesATextFileUnderItsNameInTheCourse() throws Exception {
        Path document = folder.resolve("lesson-1.docx");
        try (XWPFDocument written = new XWPFDocument();
                OutputStream out = Files.newOutputStream(document)) {
            written.createParagraph().createRun().setText("Now.");
            written.write(out);
        }
        Path course = Files.writeString(
                folder.resolve("course.yaml"),
                "lessons:  # in order\n  - my-lesson-1.docx\n  - lesson-1.docx  # the old one\n");
        Files.setPosixFilePermissions(course, PosixFilePermissions.fromString("rw-rw-r--"));

        LessonText made = texts.asText(document);

        assertThat(made.file())
                .isEqualTo(folder.resolve("lesson-1.md"))
                .content()
                .isEqualTo("Now.\n\n");
        assertThat(folder.resolve("documents/lesson-1.docx")).exists();
        assertThat(course)
                .content()
                .isEqualTo("lessons:  # in order\n  - my-lesson-1.docx\n  - lesson-1.md  # the old one\n");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(course)))
                .isEqualTo("rw-rw-r--");
    }

    @Test
    void aDocumentIsNotWrittenAsText() {
        assertThatThrownBy(() -> texts.save(folder.resolve("a.docx"), "One.", ""))
                .hasMessageContaining("a document can't be edited here; make a text file of it");
        assertThat(List.of(folder.toFile().list())).containsExactly("lesson.md");
    }
}
