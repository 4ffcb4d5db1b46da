package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

/** At which word a picture of a script stands, and how far it is shown. */
final class CoverPlacesTest {
    @Test
    void aPictureStandsBeforeTheWordThatFollowsIt() throws ProblemException {
        Script script = read("""
            One line here. Mark the ![the jar](jar.jpg) jar now.

            ![](pictures/at%20noon.png)

            Then a third line.
            At its end ![a film](../film.mp4)
            Next line.

            > ![quoted](q.png)

            Last line.
            """);
        assertThat(script.covers())
                .containsExactly(
                        new Cover("jar.jpg", "the jar", 2, 3, 1),
                        new Cover("pictures/at%20noon.png", "at%20noon.png", 3, 1, 3),
                        new Cover("../film.mp4", "a film", 5, 1, 6),
                        new Cover("q.png", "quoted", 6, 1, 9));
    }

    @Test
    void namesAndLinesOfOtherSpeakersHaveNoWords() throws ProblemException {
        Script script = read("""
            ---
            speaker: Host
            ---
            HOST: Mark the ![the jar](jar.jpg) jar now.
            GUEST: I see where ![b](b.png) it is.
            [HOST] And now ![c](c.png) go on.
            """);
        assertThat(script.lines()).hasSize(2);
        assertThat(script.covers())
                .containsExactly(
                        new Cover("jar.jpg", "the jar", 1, 3, 4),
                        new Cover("b.png", "b", 2, 1, 5),
                        new Cover("c.png", "c", 2, 3, 6));
    }

    @Test
    void itIsShownUntilTheNextDirectionOrTheParagraphsEnd() throws ProblemException {
        Script script = read("""
            ![a](a.png) One.
            Two.
            <!-- smile -->
            Three.

            ![b](b.png)

            Four.
            Five.

            Six.
            """);
        assertThat(script.covers().stream().map(cover -> cover.file() + " to " + cover.lastLine(script.elements())))
                .containsExactly("a.png to 2", "b.png to 5");
    }

    @Test
    void anAddressOnTheWebIsNoPicture() throws ProblemException {
        Script script = read("""
            ![a](https://example.org/a.png) One. ![b](data:image/png;base64,AA) Two.
            """);
        assertThat(script.covers()).isEmpty();
    }

    @Test
    void whereTheAuthorSaysNothingThePresenterSeesTheFilesName() throws ProblemException {
        Script script = read("""
            ![](pictures/jar.jpg)

            One.
            """);
        assertThat(script.elements().get(0)).isEqualTo(new Direction("jar.jpg", 0, 1));
    }

    private static Script read(String text) throws ProblemException {
        return ScriptReader.parse(text, "l.md", Format.MARKDOWN);
    }
}
