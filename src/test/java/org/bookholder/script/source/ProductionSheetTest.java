package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines about a script's making, as they stand above scripts; common practice. */
final class ProductionSheetTest {
    private static List<String> shown(String text) throws ProblemException {
        return shown(ScriptReader.parse(text, "l", Format.PLAIN_TEXT));
    }

    private static List<String> shown(Script script) {
        return script.elements().stream()
                .map(element -> (element instanceof Direction ? "> " : "") + element.text())
                .toList();
    }

    @Test
    void aboveTheScriptTheyAreShown() throws ProblemException {
        Script script = ScriptReader.parse("""
                Title: The wheel
                Writer: A. Wright
                LENGTH: 2 minutes
                STATUS: second draft

                HOST: Take the wheel.

                HOST: Turn it.
                """, "l", Format.PLAIN_TEXT);
        assertThat(script.title()).isEqualTo("The wheel");
        assertThat(shown(script))
                .containsExactly(
                        "> Writer: A. Wright",
                        "> LENGTH: 2 minutes",
                        "> STATUS: second draft",
                        "> HOST",
                        "Take the wheel.",
                        "Turn it.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Length: thirty inches.",
                "Draft: a plan that is not done.",
                "Date: the fruit of a palm.",
                "Author: the one who wrote it.",
                "Project name: wheel."
            })
    void inTheTextTheyAreSpoken(String text) throws ProblemException {
        assertThat(shown("Take the wheel.\n\n" + text)).containsExactly("Take the wheel.", text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"CLIENT", "Director", "EDITOR", "Author"})
    void aSpeakerMayHaveSuchAName(String name) throws ProblemException {
        String text = "%s: I need a wheel.\n\nHOST: What for?\n\n%s: For my cart.\n".formatted(name, name);
        assertThat(shown(text))
                .containsExactly("> " + name, "I need a wheel.", "> HOST", "What for?", "> " + name, "For my cart.");
        Script part = ScriptReader.explain(SpeakerChoice.in(text, List.of(name)), "l", Format.PLAIN_TEXT)
                .script();
        assertThat(shown(part))
                .containsExactly("> " + name, "I need a wheel.", "> HOST", "> What for?", "> " + name, "For my cart.");
    }
}
