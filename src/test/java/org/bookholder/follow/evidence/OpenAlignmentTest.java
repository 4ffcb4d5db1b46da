package org.bookholder.follow.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Prepared;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class OpenAlignmentTest {
    @Test
    void alignsEachWord() {
        OpenAlignment alignment = align("lace the first side", "lace the first side");
        assertThat(counterparts(alignment, 4)).containsExactly("lace", "the", "first", "side");
        assertThat(alignment.extras()).isEmpty();
    }

    @Test
    void joinsThePiecesOfAWord() {
        OpenAlignment alignment = align("then something fell", "then some thing fell");
        assertThat(counterparts(alignment, 3)).containsExactly("then", "some thing", "fell");
        assertThat(alignment.exact(1)).isTrue();
    }

    @Test
    void doesNotJoinAWordToACompleteNeighbour() {
        OpenAlignment alignment = align("this is for the rim", "this one is for the rim");
        assertThat(counterparts(alignment, 5)).containsExactly("this", "is", "for", "the", "rim");
        assertThat(alignment.extras())
                .singleElement()
                .satisfies(extra -> assertThat(extra.after()).isEqualTo(1));
    }

    @Test
    void findsASubstitution() {
        OpenAlignment alignment = align("turn the wheel over", "turn the hammer over");
        assertThat(counterparts(alignment, 4)).containsExactly("turn", "the", "hammer", "over");
    }

    @Test
    void findsAnOmission() {
        OpenAlignment alignment = align("turn the heavy wheel", "turn the wheel");
        assertThat(counterparts(alignment, 4)).containsExactly("turn", "the", "", "wheel");
    }

    @Test
    void alignsALineOfTwoThousandWords() {
        String[] words = new String[2000];
        Arrays.setAll(words, i -> "spoke" + (char) ('a' + i % 26) + (char) ('a' + i / 26 % 26));
        String line = String.join(" ", words);
        assertThat(counterparts(align(line, line), 2000)).containsExactly(words);
    }

    private static OpenAlignment align(String line, String heard) {
        List<PreparedWord> words = Prepared.of(Scripts.of(line)).lines().get(0);
        List<RecognizedWord> recognized = new ArrayList<>();
        for (String word : heard.split(" ", -1)) {
            double at = recognized.size();
            recognized.add(new RecognizedWord(word, StreamTime.ofSeconds(at), StreamTime.ofSeconds(at + 1), 1));
        }
        return new OpenAlignment(words, recognized);
    }

    private static List<String> counterparts(OpenAlignment alignment, int words) {
        List<String> result = new ArrayList<>();
        for (int i = 0; i < words; i++) {
            result.add(String.join(
                    " ",
                    alignment.counterpart(i).stream().map(RecognizedWord::text).toList()));
        }
        return result;
    }
}
