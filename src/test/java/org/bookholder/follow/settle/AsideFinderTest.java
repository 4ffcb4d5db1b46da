package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.word;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.evidence.OpenWords;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** What counts as speech that is not in the script, by the words that each ear heard outside the attempts. */
final class AsideFinderTest {
    private static final Attempt FIRST = complete(2, 1, 1, 4, 10, 12);
    private static final Attempt SECOND = complete(2, 2, 2, 4, 20, 22);

    private static final Attempt THIRD = complete(2, 3, 3, 4, 30, 32);

    private final byte[] levels = new byte[40 * FrameLevels.PER_SECOND];
    private final OpenWords open = new OpenWords();
    private final List<PathSpan> spans = new ArrayList<>();

    @Test
    void speechBeforeBetweenAndAfterTheLinesIsFoundWithTheLineBeforeIt() {
        open(word("one", 1, 1.5), word("moment", 1.6, 2));
        open(word("was", 15, 15.4), word("that", 15.5, 16));
        open(word("all", 30, 30.5), word("done", 30.6, 31));
        assertThat(found(FIRST, SECOND))
                .containsExactly(
                        new Aside(2, s(1), s(2), "one moment", 0),
                        new Aside(2, s(15), s(16), "was that", 1),
                        new Aside(2, s(30), s(31), "all done", 2));
    }

    @Test
    void wordsOfALineAreNoAside() {
        open(word("turn", 10, 10.5), word("the", 10.5, 11), word("wheel", 11, 12));
        assertThat(found(FIRST)).isEmpty();
    }

    @Test
    void aPauseOfMoreThanASecondParts() {
        open(word("one", 1, 1.5), word("moment", 1.6, 2), word("please", 3, 3.5), word("now", 3.6, 4));
        assertThat(found(FIRST)).extracting(Aside::said).containsExactly("one moment please now");
        open(word("oh", 5.1, 5.5), word("well", 5.6, 6));
        assertThat(found(FIRST)).extracting(Aside::said).containsExactly("one moment please now", "oh well");
    }

    @Test
    void twoWordsInSevenTenthsOfASecondAreEnough() {
        open(word("oh", 1, 1.3), word("well", 1.3, 1.7));
        assertThat(found(FIRST)).hasSize(1);
    }

    @Test
    void aSingleWordOrAShorterSoundIsTooLittle() {
        open(word("oh", 1, 1.9));
        open(word("oh", 4, 4.3), word("well", 4.3, 4.65));
        assertThat(found(FIRST)).isEmpty();
    }

    @Test
    void whatTheScriptEarHeardMakesAnAsideLongerButIsNotItsText() {
        open(word("one", 2, 2.2), word("moment", 2.2, 2.4));
        assertThat(found(FIRST)).as("too short for the open ear alone").isEmpty();
        off(word("[unk]", 1.5, 2.0), word("wheel", 2.4, 3));
        assertThat(found(FIRST)).containsExactly(new Aside(2, s(1.5), s(3), "one moment", 0));
    }

    @Test
    void wordsOfALineThatTheScriptEarFollowedAreNotCounted() {
        spans.add(new PathSpan(0, List.of(step(word("turn", 1, 2), false))));
        open(word("one", 2, 2.2), word("moment", 2.2, 2.4));
        assertThat(found(FIRST)).isEmpty();
    }

    @Test
    void whatIsFarSofterThanTheReaderIsSomebodyElses() {
        open(word("one", 1, 1.5), word("moment", 1.6, 2));
        levels(-20, -40);
        assertThat(found(FIRST, SECOND, THIRD)).isEmpty();
    }

    @Test
    void theReaderMayTurnAway() {
        open(word("one", 1, 1.5), word("moment", 1.6, 2));
        levels(-20, -28);
        assertThat(found(FIRST, SECOND, THIRD)).hasSize(1);
    }

    @Test
    void whileTheReaderIsHardlyKnownNothingIsTooSoft() {
        open(word("one", 1, 1.5), word("moment", 1.6, 2));
        levels(-20, -40);
        assertThat(found(FIRST, SECOND)).hasSize(1);
    }

    @Test
    void oneLoudReadingDoesNotMakeTheOthersSoft() {
        open(word("one", 24.0, 24.5), word("moment", 24.6, 25));
        levels(-30, -36);
        fill(10, 12, -15);
        assertThat(found(FIRST, SECOND, THIRD)).hasSize(1);
    }

    /** Levels in dBFS of the lines, and of what is said outside. */
    private void levels(int lines, int outside) {
        Arrays.fill(levels, (byte) -70);
        fill(1, 2, outside);
        fill(24, 25, outside);
        fill(10, 12, lines);
        fill(20, 22, lines);
        fill(30, 32, lines);
    }

    private void fill(int from, int to, int level) {
        Arrays.fill(levels, from * FrameLevels.PER_SECOND, to * FrameLevels.PER_SECOND, (byte) level);
    }

    private void open(RecognizedWord... words) {
        open.add(Arrays.asList(words), words[words.length - 1].end());
    }

    private void off(RecognizedWord... words) {
        spans.add(new PathSpan(
                PathSpan.OFF, Arrays.stream(words).map(word -> step(word, true)).toList()));
    }

    private static PathStep step(RecognizedWord word, boolean off) {
        PathStep.Kind kind = off ? PathStep.Kind.OFF : PathStep.Kind.MATCH;
        return new PathStep(null, 0, off, kind, -1, false, word, 0, 0);
    }

    private List<Aside> found(Attempt... attempts) {
        Loudness loudness = new Loudness(StreamTime.ZERO);
        loudness.add(new FrameLevels(StreamTime.ZERO, levels));
        ReaderLevel reader = new ReaderLevel(loudness);
        Arrays.stream(attempts).forEach(reader::add);
        return new AsideFinder(open, reader).find(spans, Arrays.asList(attempts), 2);
    }
}
