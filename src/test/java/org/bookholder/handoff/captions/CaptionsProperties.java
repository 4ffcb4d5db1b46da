package org.bookholder.handoff.captions;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.bookholder.timing.StreamTime;

/** What holds for captions of any lesson; sources of the limits as in {@link CaptionsTest}. */
final class CaptionsProperties {
    private static final CaptionRules RULES = CaptionRules.standard();

    @Property(tries = 60)
    void keepEveryWordInOrderAndItsTime(@ForAll("lessons") List<List<TimedWord>> lesson) {
        List<Caption> captions = new CaptionWriter(RULES).write(lesson);
        List<TimedWord> words = lesson.stream().flatMap(List::stream).toList();
        List<String> shown = captions.stream()
                .flatMap(c -> c.rows().stream())
                .flatMap(row -> List.of(row.split(" ", -1)).stream())
                .toList();
        assertThat(shown).isEqualTo(words.stream().map(TimedWord::text).toList());
        int word = 0;
        for (Caption caption : captions) {
            assertThat(words.get(word).start().isBefore(caption.start())).isFalse();
            assertThat(words.get(word).start().since(caption.start())).isLessThanOrEqualTo(RULES.early());
            for (String row : caption.rows()) {
                word += row.split(" ", -1).length;
            }
            StreamTime spoken = words.get(word - 1).end();
            assertThat(caption.end().since(spoken)).isLessThanOrEqualTo(RULES.linger());
        }
    }

    @Property(tries = 60)
    void neverOverlapNorFlashNorLeaveATinyGap(@ForAll("lessons") List<List<TimedWord>> lesson) {
        List<Caption> captions = new CaptionWriter(RULES).write(lesson);
        for (int i = 0; i + 1 < captions.size(); i++) {
            Caption caption = captions.get(i);
            StreamTime next = captions.get(i + 1).start();
            assertThat(next.isBefore(caption.end())).isFalse();
            StreamTime stands = caption.end().since(caption.start());
            if (stands.compareTo(RULES.shortest()) < 0) {
                // Only the next caption may cut it short.
                assertThat(caption.end()).isEqualTo(next);
            }
        }
    }

    @Property(tries = 60)
    void fitTwoRowsAndSevenSeconds(@ForAll("lessons") List<List<TimedWord>> lesson) {
        for (Caption caption : new CaptionWriter(RULES).write(lesson)) {
            assertThat(caption.rows())
                    .hasSizeBetween(1, 2)
                    .allSatisfy(row -> assertThat(row.length()).isLessThanOrEqualTo(42));
            assertThat(caption.end().since(caption.start())).isLessThanOrEqualTo(StreamTime.ofSeconds(7));
        }
    }

    /** 17 characters a second: a caption that stands shorter has no time left before it or after it. */
    @Property(tries = 60)
    void standLongEnoughToBeReadWhereTheVoiceAllows(@ForAll("lessons") List<List<TimedWord>> lesson) {
        List<Caption> captions = new CaptionWriter(RULES).write(lesson);
        for (int i = 0; i < captions.size(); i++) {
            Caption caption = captions.get(i);
            if (perSecond(caption) > 17.1) {
                boolean gapAfter = i + 1 < captions.size()
                        && caption.end().isBefore(captions.get(i + 1).start());
                double stood = caption.end().since(caption.start()).seconds();
                // Nothing stands longer than seven seconds, nor for long after its words.
                assertThat(gapAfter && stood < 6.9 && stood < RULES.linger().seconds())
                        .isFalse();
            }
        }
    }

    private static double perSecond(Caption caption) {
        int characters = String.join(" ", caption.rows()).length();
        return characters / caption.end().since(caption.start()).seconds();
    }

    /** Lines of one to forty words of one to fourteen letters, said at any pace, with pauses between. */
    @Provide
    Arbitrary<List<List<TimedWord>>> lessons() {
        Arbitrary<String> text = Arbitraries.strings()
                .withCharRange('a', 'z')
                .ofMinLength(1)
                .ofMaxLength(13)
                .flatMap(letters -> Arbitraries.of("", "", "", ",", ".").map(mark -> letters + mark));
        Arbitrary<List<String>> line = text.list().ofMinSize(1).ofMaxSize(40);
        return Combinators.combine(
                        line.list().ofMinSize(1).ofMaxSize(6),
                        Arbitraries.integers().between(100, 900),
                        Arbitraries.integers().between(0, 3000))
                .as(CaptionsProperties::said);
    }

    private static List<List<TimedWord>> said(List<List<String>> lines, int millisPerWord, int pause) {
        List<List<TimedWord>> said = new ArrayList<>();
        long now = 500;
        for (List<String> line : lines) {
            List<TimedWord> words = new ArrayList<>();
            for (String word : line) {
                words.add(new TimedWord(word, millis(now), millis(now + millisPerWord * 9 / 10)));
                now += millisPerWord;
            }
            said.add(words);
            now += pause;
        }
        return said;
    }

    private static StreamTime millis(long millis) {
        return new StreamTime(48 * millis);
    }
}
