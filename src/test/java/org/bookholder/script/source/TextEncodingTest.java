package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mozilla.universalchardet.Constants;

/** The encoder of the Java platform writes what is read here. */
class TextEncodingTest {
    private static final String TEXT = "The caf\u00e9\u2019s \u201cna\u00efve\u201d plan costs 5 \u20ac.\nGo on.\n";

    /** The application has a Java of its own, without modules that nothing needs. */
    @Test
    void theJavaOfTheApplicationHasEveryCharacterSetThatMayBeFound() throws Exception {
        String application = Files.readString(Path.of("src/main/application/application.xml"));
        List<String> missing = new ArrayList<>();
        for (Field name : Constants.class.getFields()) {
            String found = String.valueOf(name.get(null));
            if (Charset.isSupported(found)) {
                String module = Charset.forName(found).getClass().getModule().getName();
                if (!application.matches(
                        "(?s).*name=\"modules\" value=\"[^\"]*\\b" + Pattern.quote(module) + "[,\"].*")) {
                    missing.add(found + " of " + module);
                }
            }
        }
        assertThat(missing).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"UTF-8, false", "UTF-16, false", "UTF-16LE, true", "UTF-16BE, true", "windows-1252, true"})
    void textIsReadInItsEncodingAndAGuessIsSaid(String name, boolean guessed) throws ProblemException {
        ConvertedDocument read = ScriptReader.convert(TEXT.getBytes(Charset.forName(name)), "l.txt", Map.of());

        assertThat(read.text()).isEqualTo(TEXT);
        assertThat(read.leftOut())
                .extracting(LeftOut::what)
                .isEqualTo(guessed ? List.of("the file's encoding") : List.of());
    }

    @Test
    void otherAlphabetsAreFoundByTheDetector() throws ProblemException {
        String russian = "\u0412\u0435\u0441\u043d\u0430 \u043f\u0440\u0438\u0448\u043b\u0430, \u0438"
                + " \u0443\u043b\u0435\u0439 \u0440\u0435\u0448\u0430\u0435\u0442,"
                + " \u043e\u0441\u0442\u0430\u043d\u0435\u0442\u0441\u044f \u043b\u0438 \u043e\u043d"
                + " \u0437\u0434\u0435\u0441\u044c. ";

        assertThat(TextEncoding.of(russian.repeat(4).getBytes(Charset.forName("windows-1251")))
                        .charset()
                        .name())
                .isEqualTo("windows-1251");
    }

    @Test
    void shortTextIsNotTakenForSomethingExotic() {
        assertThat(TextEncoding.of("Hi.".getBytes(StandardCharsets.US_ASCII)).guessed())
                .isFalse();
        assertThat(TextEncoding.of(new byte[] {'c', 'a', 'f', (byte) 0xe9, '.'}).charset())
                .isEqualTo(Charset.forName("windows-1252"));
        assertThat(TextEncoding.of(new byte[0]).charset()).isEqualTo(StandardCharsets.UTF_8);
    }
}
