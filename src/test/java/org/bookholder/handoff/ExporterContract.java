package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Golden;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Tests that every exporter must pass. */
abstract class ExporterContract {
    /** The exporter under test. */
    abstract Exporter exporter();

    @Test
    void isNamedByOneLowerCaseWordAndDescribed() {
        assertThat(exporter().name()).matches("[a-z]+");
        assertThat(exporter().description()).isNotBlank().doesNotContain("\n");
    }

    @Test
    void writesTheExampleAsExpected() throws IOException {
        String name = exporter().getClass().getSimpleName();
        Golden.assertMatches("handoff/" + name + ".txt", written(ExampleSession.state(), ExampleSession.events()));
    }

    @Test
    void writesTheSameTextTwice() throws IOException {
        String first = written(ExampleSession.state(), ExampleSession.events());
        assertThat(written(ExampleSession.state(), ExampleSession.events())).isEqualTo(first);
    }

    @Test
    void writesTheSameTextInAnyLocale() throws IOException {
        String expected = written(ExampleSession.state(), ExampleSession.events());
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("de-DE", "ar-EG", "tr-TR", "hi-IN-u-nu-deva")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertThat(written(ExampleSession.state(), ExampleSession.events()))
                        .as(tag)
                        .isEqualTo(expected);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void canWriteASessionInWhichNothingWasReadYet() throws IOException {
        SessionState state = Session.begin(Scripts.of("Every wheel begins with its hub."), FatigueLimits.defaults());
        assertThat(written(state, List.of())).doesNotContain("NaN").doesNotContain("null,null");
    }

    @Test
    void passesOnAWriteError() {
        assertThatThrownBy(() -> exporter().write(ExampleSession.state(), ExampleSession.events(), new FullDisk()))
                .isInstanceOf(IOException.class)
                .hasMessage("no room");
    }

    private String written(SessionState state, List<SessionEvent> events) throws IOException {
        StringBuilder out = new StringBuilder();
        exporter().write(state, events, out);
        return out.toString();
    }

    private static final class FullDisk implements Appendable {
        @Override
        public Appendable append(CharSequence text) throws IOException {
            throw new IOException("no room");
        }

        @Override
        public Appendable append(CharSequence text, int start, int end) throws IOException {
            throw new IOException("no room");
        }

        @Override
        public Appendable append(char c) throws IOException {
            throw new IOException("no room");
        }
    }
}
