package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BadScriptTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | l.md:1: the script is empty; write the words to be read as plain paragraphs",
                "'---\n---\n' | l.md:1: the script is empty; write the words to be read as plain paragraphs",
                "'# Title\n\n> Smile.' | l.md:1: nothing in the script is spoken, it holds only headings and directions; "
                        + "write the words to be read as plain paragraphs",
                "'---\ntitle: x\nHello.' | l.md:1: the front matter is not closed; put a line of three dashes below it",
                "'---\npace: 0\n---\nHi.' | l.md:2: pace 0 is out of range; give 40 to 300 words per minute",
                "'---\ntitle: x\npace: 5000\n---\nHi.' | l.md:3: pace 5000 is out of range; give 40 to 300 words per minute",
                "'---\npace: fast\n---\nHi.' | l.md:2: pace 'fast' is not a whole number; give 40 to 300 words per minute",
                "'---\npace: [1, 2]\n---\nHi.' | l.md:2: 'pace' has no single value; write one value after the colon, or leave it out",
                "'---\npase: 100\n---\nHi.' | l.md:2: there is no setting 'pase'; write 'pace' if that is meant",
                "'---\nlines: whole\n---\nHi.' | l.md:2: lines 'whole' is not known; give 'sentences' or 'as-written'",
                "'---\ncontractions: strict\n---\nHi.' | l.md:2: contractions 'strict' is not known; give one of free, as-written",
                "'---\nlanguage: english!\n---\nHi.' | l.md:2: 'english!' is no language tag; give one such as en-US",
                "'---\n- a\n---\nHi.' | l.md:1: the front matter is not a list of names and values; write it as name: value",
                "'Hi.\n\nBuy [12](say:) now.' | l.md:3: the spoken form of '12' is empty; write what is said, as in [12](say:a dozen)",
                "'Hi.\nBuy [12](say:a dozen.' | l.md:2: the spoken form in 'Buy [12](say:a dozen.' is not closed; end it with )",
            })
    void isNamedByLineWithWhatToDo(String text, String message) {
        assertThat(problem(text)).hasMessage(message);
    }

    @Test
    void reportsWhereFrontMatterIsInvalid() {
        ProblemException problem = problem("---\ntitle: x\npace: a: b\n---\nHi.");
        assertThat(problem.where()).isEqualTo("l.md:3");
        assertThat(problem.what()).startsWith("the front matter can't be read");
        assertThat(problem.remedy())
                .isEqualTo("write each setting as name: value, and put quotes around a value with a colon in it");
        assertThat(problem("---\npace: 90\npace: 100\n---\nHi.").what()).startsWith("the front matter can't be read");
    }

    @Test
    void mayBeAMissingFile() {
        Path file = folder.resolve("none.md");
        assertThat(problem(file)).hasMessage(file + ": there is no such file; check the name and the folder");
    }

    @Test
    void mayBeAFolder() {
        assertThat(problem(folder)).hasMessage(folder + ": this is not a file; give the script file itself");
    }

    @Test
    void mayBeNoText() throws IOException {
        Path zip = Files.write(folder.resolve("x.md"), new byte[] {'P', 'K', 3, 4, 0, 0, (byte) 0xff, 0});
        assertThat(problem(zip))
                .hasMessage(
                        zip + ": this is a document or an archive, not text; open it in a word processor and save or "
                                + "export it as DOCX");
        Path picture = Files.write(folder.resolve("y.md"), new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 26, 0});
        assertThat(problem(picture))
                .hasMessage(picture
                        + ":2: this is not a text file; give a script saved as Markdown or plain text in UTF-8");
        Path pdf = Files.writeString(folder.resolve("z.txt"), "%PDF-1.7\n");
        assertThat(problem(pdf).remedy()).isEqualTo("open it in a word processor and save or export it as DOCX");
    }

    @Test
    void mayBeFarTooLarge() throws IOException {
        Path file = folder.resolve("x.txt");
        try (java.io.RandomAccessFile large = new java.io.RandomAccessFile(file.toFile(), "rw")) {
            large.setLength(SourceText.MOST_BYTES + 1);
        }
        assertThat(problem(file).what()).isEqualTo("the file is too large for a script (over 16 MB)");
    }

    private static ProblemException problem(String text) {
        return catchThrowableOfType(ProblemException.class, () -> ScriptReader.parse(text, "l.md", Format.MARKDOWN));
    }

    private static ProblemException problem(Path file) {
        return catchThrowableOfType(ProblemException.class, () -> ScriptReader.read(file));
    }
}
