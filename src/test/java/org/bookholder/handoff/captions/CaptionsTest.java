package org.bookholder.handoff.captions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits from the Timed Text Guide of the University of Tennessee Libraries (42 characters, two rows, 5/6 s to 7 s) and
 * the BBC Subtitle Guidelines (0.3 s a word, gaps of a second or none, where to break); grammar from W3C WebVTT.
 */
final class CaptionsTest {
    private static final String LONG =
            "When you have counted every spoke, and there are a great many of them, write the number down on the rim"
                    + " with a soft pencil so that the next person, who may well be you, does not have to begin again.";

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.4, 0.7, 1.5})
    void keepToTheLimitsAtAnyPace(double perWord) {
        List<Caption> captions = captions(perWord, LONG, "Stop.", "Now lace the other side in the same way.");
        StreamTime last = StreamTime.ZERO;
        for (Caption caption : captions) {
            assertThat(caption.rows())
                    .hasSizeBetween(1, 2)
                    .allSatisfy(row -> assertThat(row.length()).isBetween(1, 42));
            assertThat(caption.start().isBefore(last)).isFalse();
            assertThat(caption.end().since(caption.start()).seconds()).isBetween(0.3, 7.0);
            last = caption.end();
        }
        String all = String.join(
                " ", captions.stream().flatMap(c -> c.rows().stream()).toList());
        assertThat(all).isEqualTo(LONG + " Stop. Now lace the other side in the same way.");
    }

    @Test
    void breakWhereItMakesSense() {
        List<Caption> captions = captions(0.35, LONG);
        assertThat(captions.stream().map(c -> String.join(" | ", c.rows())))
                .allSatisfy(text -> assertThat(text).doesNotEndWith(" the").doesNotContain(" the |", " a |"));
        assertThat(captions.get(0).rows())
                .containsExactly("When you have counted every spoke,", "and there are a great many of them,");
    }

    @Test
    void aShortCaptionStandsLongEnoughToBeReadIfThereIsRoom() {
        CaptionWriter writer = new CaptionWriter(CaptionRules.standard());
        List<Caption> captions = writer.write(
                List.of(List.of(new TimedWord("Stop.", s(1), s(1.3))), List.of(new TimedWord("Go.", s(9), s(9.4)))));
        assertThat(captions.get(0).end()).isEqualTo(s(1).plus(s(5 / 6.0)));
        assertThat(captions.get(1).start()).isEqualTo(s(9));
    }

    @Test
    void aGapOfLessThanASecondIsClosed() {
        CaptionWriter writer = new CaptionWriter(CaptionRules.standard());
        List<Caption> captions = writer.write(
                List.of(List.of(new TimedWord("Stop.", s(1), s(2))), List.of(new TimedWord("Go.", s(2.9), s(3.4)))));
        assertThat(captions.get(0).end()).isEqualTo(s(2.9));
    }

    /** Seven seconds: Timed Text Guide of the University of Tennessee Libraries; also where one word takes longer. */
    @Test
    void noneStandsLongerThanSevenSeconds() {
        CaptionWriter writer = new CaptionWriter(CaptionRules.standard());
        List<Caption> captions = writer.write(List.of(
                List.of(new TimedWord("So", s(1), s(1.3)), new TimedWord("well...", s(1.4), s(9.5))),
                List.of(new TimedWord("Go.", s(10), s(10.4)))));
        assertThat(captions)
                .allSatisfy(caption ->
                        assertThat(caption.end().since(caption.start())).isLessThanOrEqualTo(s(7)));
    }

    /** 34 characters need 2 s at 17 a second; the voice takes 1.6 s, half a second after a line that was read slowly. */
    @Test
    void aQuickLineAppearsALittleEarlyIfTheOneBeforeItHasBeenRead() {
        CaptionWriter writer = new CaptionWriter(CaptionRules.standard());
        List<Caption> captions = writer.write(List.of(
                List.of(new TimedWord("Look.", s(1), s(3))),
                List.of(
                        new TimedWord("Quickly", s(4), s(4.4)),
                        new TimedWord("now-and-then-everywhere-at", s(4.4), s(5.6))),
                List.of(new TimedWord("Go.", s(5.6), s(6)))));
        assertThat(captions.get(1).start()).isEqualTo(s(3.6));
        assertThat(captions.get(1).end()).isEqualTo(s(5.6));
        assertThat(captions.get(0).end()).isEqualTo(s(3.6));
    }

    /** W3C WebVTT: a cue's text may hold neither a bare ampersand nor a less-than sign nor the arrow. */
    @Test
    void markupIsEscapedInWebVttOnly() {
        List<Caption> captions = List.of(new Caption(s(1), s(2), List.of("5 < 6 & 7 --> 8")));
        assertThat(CaptionFiles.webVtt(captions))
                .isEqualTo("WEBVTT\n\n00:00:01.000 --> 00:00:02.000\n5 &lt; 6 &amp; 7 --&gt; 8\n");
        assertThat(CaptionFiles.subRip(captions))
                .isEqualTo("1\r\n00:00:01,000 --> 00:00:02,000\r\n5 < 6 & 7 --> 8\r\n\r\n");
    }

    private static List<Caption> captions(double perWord, String... lines) {
        List<List<TimedWord>> timed = new ArrayList<>();
        double now = 0.5;
        for (String line : lines) {
            List<TimedWord> words = new ArrayList<>();
            for (String word : line.split(" ", -1)) {
                words.add(new TimedWord(word, s(now), s(now + 0.9 * perWord)));
                now += perWord;
            }
            timed.add(words);
            now += 0.4;
        }
        return new CaptionWriter(CaptionRules.standard()).write(timed);
    }
}
