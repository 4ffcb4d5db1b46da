package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SentenceSplitterTest {
    /** A bar stands where a sentence ends. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "The hive decides. |We wait! |Do we?",
                "Dr. Hill and Mrs. Reed came. |St. Ives is far.",
                "Take fruit, e.g. Apples, or nuts, i.e. Hazels.",
                "J. K. Hill wrote it. |C. Reed did not.",
                "Eat vitamin C. |It helps.",
                "And so did I. |We left.",
                "See No. 5 for more. |Answer no. |Then stop.",
                "It weighs 3.5 kg. |Lift it.",
                "He lives on Elm St. |The house is red.",
                "We met at 5 p.m. |Then we left.",
                "The U.S. Mint is old. |We left the U.S. |The end.",
                "“Stop.” |She stopped.",
                "He said: “Wait…” and waited.",
                "See fig. 3 and pp. 4 to 6. |Good.",
                "See https://example.org/a?b=c&d=1 now. |Go.",
                "Run index.html?page=2 and wait! |Go.",
                "Open main.py? |Yes.",
                "“Why?” she asked. |“Go!” |We went.",
                "The ? key is here. |The ! too.",
                "Bees, wasps, etc. |They fly.",
            })
    void sentencesEndWhereAReaderExpects(String marked) {
        String text = marked.replace("|", "");
        List<Integer> ends = new ArrayList<>();
        for (int at = marked.indexOf('|'); at >= 0; at = marked.indexOf('|', at + 1)) {
            ends.add(at - ends.size());
        }
        ends.add(text.length());

        assertThat(new SentenceSplitter("en-US").ends(MarkedSourceLine.plain(text)))
                .isEqualTo(ends);
    }
}
