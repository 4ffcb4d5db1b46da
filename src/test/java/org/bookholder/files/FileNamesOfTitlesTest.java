package org.bookholder.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FileNamesOfTitlesTest {
    @ParameterizedTest
    @CsvSource({
        "Reading a bent wheel: part 2!, reading-a-bent-wheel-part-2",
        "\u041a\u043e\u043b\u0435\u0441\u043e: \u0447\u0430\u0441\u0442\u044c 2, \u043a\u043e\u043b\u0435\u0441\u043e-\u0447\u0430\u0441\u0442\u044c-2",
        "\u8f66\u8f6e \u7b2c\u4e00\u8bfe, \u8f66\u8f6e-\u7b2c\u4e00\u8bfe",
        "\u092a\u0939\u093f\u092f\u093e, \u092a\u0939\u093f\u092f\u093e",
        "U\u0308bung, \u00fcbung",
        "\u2764\ufe0f Welcome, welcome",
        "\u2764\ufe0f, lesson",
        "1\ufe0f\u20e3 Intro, 1-intro",
        "\u0301 x, x",
        "???, lesson"
    })
    void lettersOfAllScriptsAreKept(String title, String name) {
        assertThat(FileNames.ofTitle(title)).isEqualTo(name);
    }

    /** Microsoft, "Naming Files, Paths, and Namespaces": reserved names, also before an ending. */
    @ParameterizedTest
    @CsvSource({"Con, con-lesson", "NUL, nul-lesson", "COM\u00b9, com\u00b9-lesson", "lpt9, lpt9-lesson", "Cone, cone"})
    void noNameIsADevice(String title, String name) {
        assertThat(FileNames.ofTitle(title)).isEqualTo(name);
    }

    /** A file system takes 255 bytes (ext4) or units of UTF-16 (NTFS, APFS); names of a hand-off get up to 60 more. */
    @Test
    void longTitlesAreCutBetweenCharacters() {
        assertThat(FileNames.ofTitle("x".repeat(300))).hasSize(40);
        String rare = FileNames.ofTitle("\ud840\udc0b".repeat(300));
        assertThat(rare.codePoints()).hasSize(40).doesNotContain(0xd840);
        assertThat(rare.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(255 - 60);
    }

    @Test
    void plainNamesLoseAccentsOfLatinLettersOnly() {
        assertThat(FileNames.plain("\u00dcbung 1")).isEqualTo("Ubung-1");
        assertThat(FileNames.plain("\u0439\u043e\u0433\u0430 1")).isEqualTo("\u0439\u043e\u0433\u0430-1");
        assertThat("\u00dcbung").doesNotMatch("[" + FileNames.LETTERS + "]+");
        assertThat("\u0439\u043e\u0433\u0430-1").matches("[" + FileNames.LETTERS + "]+");
    }
}
