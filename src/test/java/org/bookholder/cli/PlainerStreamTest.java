package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PlainerStreamTest {
    @ParameterizedTest
    @CsvSource({
        // The console of an English Windows; of a Western European one; of nearly all other systems.
        "IBM437, \"go\" for \"sta\u00fd\" ...",
        "windows-1252, \u201cgo\u201d for \u201csta\u00fd\u201d \u2026",
        "UTF-8, \u201cgo\u201d for \u201csta\u00fd\u201d \u2026"
    })
    void replacesOnlyWhatTheConsoleDoesNotHave(String name, String expected) {
        Charset charset = Charset.forName(name);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintStream out = new PlainerStream(bytes, charset);
        String text = "\u201cgo\u201d for \u201csta\u00fd\u201d \u2026";
        out.print(text);
        out.println(text);
        out.printf(Locale.ROOT, "%s", text);
        out.append(text).append('\n');
        String once = new String(expected.getBytes(charset), charset);
        assertThat(bytes.toString(charset)).isEqualTo(once + once + System.lineSeparator() + once + once + "\n");
    }
}
