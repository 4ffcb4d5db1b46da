package org.bookholder.handoff.captions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.swapped;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Browser;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** The texts of a film that was changed elsewhere: its lines stand in another order, and not all of them are there. */
final class FilmTextsTest {
    private static final Path W3C_PARSER = Path.of("src", "test", "resources", "webvtt", "parser.js");

    @Test
    void captionsAreInTheFilmsTimeAndOrderAndShowWhatIsSaid() throws Exception {
        String captions = text("film.vtt");
        assertThat(captions)
                .startsWith("WEBVTT\n\n00:00:01.000 --> ")
                .containsSubsequence("Every wheel", "where was I", "Rest your hands.", "Count the folks twice.");
        assertThat(captions).contains("\n00:00:10.000 --> ");
    }

    @Test
    void theTranscriptHasHeadingsAndTheScriptsParagraphs() throws Exception {
        assertThat(text("film-transcript.txt")).isEqualTo("""
            A lesson

            Every wheel <begins> & ends with its hub. where was I

            The end

            Rest your hands.

            Spokes

            Count the folks twice.
            """);
    }

    /** W3C WebVTT, "chapter cues"; the list as sites take it (common practice): the first chapter begins at zero. */
    @Test
    void chaptersBeginWithTheFirstLineAfterTheirHeading() throws Exception {
        assertThat(text("film-chapters.txt")).isEqualTo("00:00 A lesson\n00:06 The end\n00:10 Spokes\n");
        assertThat(text("film-chapters.vtt")).isEqualTo("""
            WEBVTT

            00:00:00.000 --> 00:00:06.000
            A lesson

            00:00:06.000 --> 00:00:10.000
            The end

            00:00:10.000 --> 00:00:20.000
            Spokes
            """);
    }

    @Test
    void aScriptWithoutHeadingsHasNoChapters() {
        Script plain = Scripts.of("Every wheel begins with its hub.");
        SessionState state = Session.begin(plain, FatigueLimits.defaults());
        assertThat(new FilmTexts(plain, FollowedFilm.of(state), s(20)).files("film"))
                .extracting(HandOffFile::name)
                .containsExactly("film.vtt", "film.srt", "film-transcript.txt");
    }

    /** The W3C's own parser and validator (github.com/w3c/webvtt.js); a faulty file shows that it would complain. */
    @Test
    void theW3cParserFindsNoFault() throws Exception {
        Browser.needed();
        try (Browser browser = new Browser()) {
            String parser = Files.readString(W3C_PARSER);
            String validate = parser
                    + "; return new window.WebVTTParser().parse(arguments[0], arguments[1]).errors.map(e => e.message)";
            browser.open("about:blank");
            assertThat(browser.result(validate, text("film.vtt"), "subtitles")).isEqualTo(List.of());
            assertThat(browser.result(validate, text("film-chapters.vtt"), "chapters"))
                    .isEqualTo(List.of());
            assertThat((List<?>) browser.result(validate, "WEBVTT\n\n00:01.000 -> 00:02.000\na < b\n", "subtitles"))
                    .isNotEmpty();
        }
    }

    private static String text(String name) throws Exception {
        SessionState state = film();
        HandOffFile asked = new FilmTexts(state.script(), FollowedFilm.of(state), s(20))
                .files("film").stream()
                        .filter(file -> file.name().equals(name))
                        .findFirst()
                        .orElseThrow();
        return written(asked);
    }

    private static String written(HandOffFile file) throws IOException, org.bookholder.problem.ProblemException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        file.content().write(out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static SessionState film() {
        Script plain =
                Scripts.of("Every wheel <begins> & ends with its hub.", "Count the spokes twice.", "Rest your hands.");
        List<ScriptElement> elements = new ArrayList<>(plain.elements());
        elements.add(2, new Direction("The end", 2, 5, true));
        elements.add(1, new Direction("Spokes", 1, 3, true));
        elements.add(1, new Direction("Hold it up", 0, 2));
        Script script = new Script("A lesson", plain.source(), plain.settings(), elements);
        List<Attempt> read = List.of(
                complete(1, 1, 1, 9, 1, 4),
                complete(1, 2, 3, 3, 6, 8),
                complete(1, 3, 2, 4, 10, 12, swapped(3, "spokes", "folks")));
        return Session.apply(
                Session.begin(script, FatigueLimits.defaults()),
                List.of(
                        rolled(1, 0),
                        cut(1, 20),
                        new SessionEvent.TakeSettled(
                                s(20), 1, read, List.of(new Aside(1, s(4.5), s(5.5), "where was I", 1)))));
    }
}
