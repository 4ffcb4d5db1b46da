package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Golden;
import org.junit.jupiter.api.Test;

/** Tests that every part of a hand-off must pass. */
public abstract class HandOffPartContract {
    private static final List<String> BINARY = List.of(".pdf", ".wav");

    /** The part under test. */
    protected abstract HandOffPart part();

    @Test
    void isNamedByOneLowerCaseWordAndDescribed() {
        assertThat(part().name()).matches("[a-z]+");
        assertThat(part().description()).isNotBlank().doesNotContain("\n");
    }

    @Test
    void writesTheExamplesAsExpected() throws Exception {
        assertGolden("plain", files(ExampleHandOff.plain()));
        assertGolden("filmed", files(ExampleHandOff.filmed()));
    }

    @Test
    void writesTheSameInAnyLocale() throws Exception {
        Map<String, byte[]> expected = files(ExampleHandOff.filmed());
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("de-DE", "ar-EG", "tr-TR", "hi-IN-u-nu-deva")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertThat(files(ExampleHandOff.filmed())).as(tag).containsExactlyEntriesOf(expected);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void canWriteASessionInWhichNothingWasReadYet() throws Exception {
        assertThat(files(ExampleHandOff.empty()).values())
                .allSatisfy(bytes -> assertThat(text(bytes)).doesNotContain("NaN"));
    }

    @Test
    void passesOnAWriteError() {
        for (HandOffFile file : part().files(ExampleHandOff.plain())) {
            assertThatThrownBy(() -> file.content().write(new FullDisk()))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("no room");
        }
    }

    /** The files of a hand-off, by name. */
    protected final Map<String, byte[]> files(HandOff handOff) throws IOException, ProblemException {
        Map<String, byte[]> files = new TreeMap<>();
        for (HandOffFile file : part().files(handOff)) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            file.content().write(out);
            files.put(file.name(), out.toByteArray());
        }
        return files;
    }

    /** A file's text. */
    protected static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static void assertGolden(String example, Map<String, byte[]> files) {
        files.forEach((name, bytes) -> {
            if (BINARY.stream().noneMatch(name::endsWith)) {
                // Carriage returns and byte order marks are shown, so that none changes unseen.
                Golden.assertMatches(
                        "handoff/" + example + "/" + name,
                        text(bytes).replace("\r", "\u240d").replace("\ufeff", "<BOM>"));
            }
        });
    }

    private static final class FullDisk extends OutputStream {
        @Override
        public void write(int b) throws IOException {
            throw new IOException("no room");
        }
    }
}
