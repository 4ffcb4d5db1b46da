package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.PathStep.Kind;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/**
 * How the explained words of a take become readings of lines. Words are numbered through the script from 0; a second is a word,
 * and each word of the script is there once.
 */
final class SpanBuilderTest {
    private static final Script SCRIPT =
            Scripts.of("alpha bravo charlie delta", "echo foxtrot golf hotel", "india juliet kilo lima");
    private static final List<String> WORDS = SCRIPT.lines().stream()
            .flatMap(line -> line.words().stream())
            .map(ScriptWord::written)
            .toList();

    private final SpanBuilder builder = new SpanBuilder(new ReadingGraph(ReadAloud.known(SCRIPT)));
    private final List<PathSpan> spans = new ArrayList<>();
    private double now;

    @Test
    void aLineIsClosedWhenTheNextOneBegins() {
        read(0, 1, 2, 3);
        assertThat(spans).isEmpty();
        read(4);
        assertThat(described()).containsExactly("0: alpha bravo charlie delta");
        read(5, 6, 7);
        finish();
        assertThat(described()).containsExactly("0: alpha bravo charlie delta", "1: echo foxtrot golf hotel");
    }

    @Test
    void aSingleWordOfALineIsNoReadingOfIt() {
        read(4);
        finish();
        assertThat(described()).containsExactly("off: echo");
    }

    @Test
    void goingBackWithinALineIsARepetition() {
        read(0, 1, 2);
        jump(1);
        read(2, 3);
        finish();
        assertThat(described()).containsExactly("0: alpha bravo charlie bravo charlie delta");
    }

    @Test
    void beginningALineAgainIsAnotherReading() {
        read(0, 1, 2);
        jump(0);
        read(1, 2, 3);
        finish();
        assertThat(described()).containsExactly("0: alpha bravo charlie", "0: alpha bravo charlie delta");
    }

    @Test
    void beginningAgainAtTheSecondWordIsAnotherReadingOnlyAfterAPause() {
        read(0, 1, 2);
        now += 1;
        jump(1);
        read(2, 3);
        finish();
        assertThat(described()).containsExactly("0: alpha bravo charlie", "0: bravo charlie delta");
    }

    @Test
    void wordsAddedBeforeALineBelongToNone() {
        add(Kind.INSERTION, -1, "so", false);
        read(0, 1, 2, 3);
        finish();
        assertThat(described()).containsExactly("off: so", "0: alpha bravo charlie delta");
    }

    @Test
    void wordsAddedWithinALineBelongToIt() {
        read(0, 1);
        add(Kind.INSERTION, -1, "really", false);
        read(2, 3);
        finish();
        assertThat(described()).containsExactly("0: alpha bravo really charlie delta");
    }

    @Test
    void wordsAddedAfterALineBelongToWhatFollows() {
        read(0, 1, 2, 3);
        add(Kind.INSERTION, -1, "well", false);
        read(4, 5, 6, 7);
        finish();
        assertThat(described())
                .containsExactly("0: alpha bravo charlie delta", "off: well", "1: echo foxtrot golf hotel");
    }

    @Test
    void oneStrayWordDoesNotEndAReadingButALongerAsideDoes() {
        read(0, 1);
        off("hm");
        read(2, 3);
        finish();
        assertThat(described()).containsExactly("0: alpha bravo hm charlie delta");
        spans.clear();
        read(4, 5);
        off("was", "that", "the", "door", "again", "just", "now");
        read(6, 7);
        finish();
        assertThat(described())
                .containsExactly("1: echo foxtrot", "off: was that the door again just now", "1: golf hotel");
    }

    @Test
    void aReadingOfWhichMoreThanHalfIsOtherWordsIsNone() {
        read(0, 1);
        add(Kind.SUBSTITUTION, 2, "cat", false);
        add(Kind.SUBSTITUTION, 3, "dog", false);
        finish();
        assertThat(described()).as("half is enough").containsExactly("0: alpha bravo cat dog");
        spans.clear();
        read(4, 5);
        add(Kind.SUBSTITUTION, 6, "cat", false);
        add(Kind.SUBSTITUTION, 7, "dog", false);
        add(Kind.INSERTION, -1, "cow", false);
        finish();
        assertThat(described()).containsExactly("off: echo foxtrot cat dog cow");
    }

    @Test
    void lookingAheadClosesALineAtItsLastWordAndChangesNothing() {
        read(0, 1, 2);
        assertThat(builder.ahead(List.of(), false)).isEmpty();
        assertThat(builder.ahead(List.of(step(Kind.MATCH, 3, "delta", false)), false))
                .extracting(PathSpan::line)
                .containsExactly(0);
        read(3, 4);
        assertThat(described()).containsExactly("0: alpha bravo charlie delta");
    }

    private void read(int... words) {
        for (int word : words) {
            add(Kind.MATCH, word, WORDS.get(word), false);
        }
    }

    private void jump(int word) {
        add(Kind.MATCH, word, WORDS.get(word), true);
    }

    private void off(String... words) {
        for (String word : words) {
            add(Kind.OFF, -1, word, false);
        }
    }

    private void add(Kind kind, int word, String heard, boolean jumped) {
        spans.addAll(builder.add(List.of(step(kind, word, heard, jumped))));
    }

    private PathStep step(Kind kind, int word, String heard, boolean jumped) {
        RecognizedWord spoken = new RecognizedWord(heard, s(now), s(now + 1), 1);
        now += 1;
        return new PathStep(null, word + 1, kind == Kind.OFF, kind, word, jumped, spoken, 0, 0);
    }

    private void finish() {
        spans.addAll(builder.finish());
    }

    private List<String> described() {
        return spans.stream()
                .map(span -> (span.off() ? "off" : span.line()) + ": "
                        + String.join(
                                " ",
                                span.heard().stream().map(RecognizedWord::text).toList()))
                .toList();
    }
}
