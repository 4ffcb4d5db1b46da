package org.bookholder.follow.graph;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class ScriptGrammarTest {
    @Test
    void givesOnePhraseForEachLine() {
        var grammar = ScriptGrammar.of(ReadAloud.known(Scripts.of("Turn the wheel.", "Stop.")));
        assertThat(grammar.orElseThrow().phrases()).containsExactly(List.of("turn", "the", "wheel"), List.of("stop"));
    }

    @Test
    void setsAFurtherFormBetweenItsNeighbours() {
        PreparedWord in = new PreparedWord(Scripts.word("in"), List.of(List.of("in")), false);
        PreparedWord year = new PreparedWord(
                Scripts.word("2019"), List.of(List.of("twenty", "nineteen"), List.of("two", "thousand")), false);
        var grammar =
                ScriptGrammar.of(new PreparedScript(Scripts.of("in 2019"), List.of(List.of(in, year)), List.of()));
        assertThat(grammar.orElseThrow().phrases())
                .containsExactly(List.of("in", "twenty", "nineteen"), List.of("in", "two", "thousand"));
    }

    @Test
    void isEmptyIfNoWordIsKnown() {
        PreparedWord unknown = new PreparedWord(Scripts.word("zwrk"), List.of(), true);
        assertThat(ScriptGrammar.of(new PreparedScript(Scripts.of("zwrk"), List.of(List.of(unknown)), List.of())))
                .isEmpty();
    }
}
