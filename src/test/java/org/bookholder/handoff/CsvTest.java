package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class CsvTest {
    /** RFC 4180, section 2: CRLF after each row, quotes around cells that hold commas, quotes or line breaks. */
    @Test
    void writesRowsAsTheRfcSays() throws IOException {
        assertThat(table("a, b", "say \"so\"", "plain", "", 7))
                .isEqualTo("one,two,three,four,five\r\n\"a, b\",\"say \"\"so\"\"\",plain,,7\r\n");
    }

    /** CSV injection (owasp.org/www-community/attacks/CSV_Injection): these characters begin a formula. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)"})
    void aTextThatBeginsLikeAFormulaStaysAText(String text) throws IOException {
        assertThat(table(text)).endsWith("\r\n\" " + text + "\"\r\n");
    }

    @Test
    void aTabOrALineBreakAtTheBeginningDoesNotBeginAFormulaEither() throws IOException {
        assertThat(table("\t=1+1")).contains(" \t=1+1");
        assertThat(table("\r=1+1")).contains(" \r=1+1");
    }

    @Test
    void numbersAndTextsWithSuchACharacterInsideStayAsTheyAre() throws IOException {
        assertThat(table(-1, "1-1", "a=b")).endsWith("\r\n-1,1-1,a=b\r\n");
    }

    /** Common practice: spreadsheet programs read a table as UTF-8 only if it begins with a byte order mark. */
    @Test
    void aTableWithMoreThanAsciiBeginsWithAByteOrderMark() throws Exception {
        assertThat(bytes("\u00e9t\u00e9")).startsWith(0xEF, 0xBB, 0xBF, 'o', 'n', 'e');
        assertThat(bytes("ete")).startsWith('o', 'n', 'e');
    }

    private static byte[] bytes(String cell) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Csv.file("table.csv", List.of("one"), () -> List.of(List.of(cell)))
                .content()
                .write(out);
        return out.toByteArray();
    }

    private static String table(Object... cells) throws IOException {
        StringBuilder out = new StringBuilder();
        Csv.write(
                out, List.of("one", "two", "three", "four", "five").subList(0, cells.length), List.of(List.of(cells)));
        return out.toString();
    }
}
