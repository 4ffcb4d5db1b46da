package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.bookholder.bench.Truth.LineTruth;
import org.bookholder.bench.Truth.Passage;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;

final class ComposerTest {
    private static final List<String> THINGS =
            List.of("wheel", "hammer", "spokes", "pedals", "ladder", "bucket", "garden", "engine");
    private static final Voice VOICE = new Voice(
            "tones",
            IntStream.range(0, 60)
                    .mapToObj(i -> new Utterance(
                            "some words about the " + THINGS.get(i % THINGS.size()) + " of today",
                            Wav.sine(200 + i, 0.3, Sound.RATE, 1)))
                    .toList());

    @Test
    void equalSeedsGiveEqualReadingsAndOthersDoNot() {
        Composition reading = Composer.compose(VOICE, 0, Recipe.eventful(), 5);
        assertThat(Composer.compose(VOICE, 0, Recipe.eventful(), 5).sound()).isEqualTo(reading.sound());
        assertThat(Composer.compose(VOICE, 0, Recipe.eventful(), 6).script()).isNotEqualTo(reading.script());
    }

    @Test
    void everythingHappensAsOftenAsTheRecipeSays() {
        Truth truth = Composer.compose(VOICE, 0, Recipe.eventful(), 1).truth();
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        Map<Deviation.Kind, Integer> kinds = new EnumMap<>(Deviation.Kind.class);
        for (LineTruth line : truth.lines()) {
            outcomes.merge(line.outcome(), 1, Integer::sum);
            line.deviation().ifPresent(k -> kinds.merge(k, 1, Integer::sum));
        }
        assertThat(outcomes)
                .containsOnly(
                        Map.entry(Outcome.SKIPPED, 3),
                        Map.entry(Outcome.INCOMPLETE, 2),
                        Map.entry(Outcome.MISREAD, 7),
                        Map.entry(Outcome.CLEAN, 28));
        assertThat(kinds)
                .containsOnly(
                        Map.entry(Deviation.Kind.SWAPPED, 3),
                        Map.entry(Deviation.Kind.DROPPED, 2),
                        Map.entry(Deviation.Kind.ADDED, 2));
        assertThat(truth.asides()).hasSize(3);
        // Three restarts, two lines read twice, and a step back over three lines.
        assertThat(truth.lines()).filteredOn(l -> truth.of(l.line()).size() > 1).hasSize(8);
    }

    @Test
    void passagesLieWhereTheVoiceIs() {
        Composition reading = Composer.compose(VOICE, 0, Recipe.eventful(), 2);
        double last = 0;
        for (Passage passage : reading.truth().passages()) {
            assertThat(passage.start()).isGreaterThanOrEqualTo(last + 0.25);
            assertThat(loudness(reading.sound(), passage.start() + 0.1, passage.end() - 0.1))
                    .isGreaterThan(1_000);
            assertThat(loudness(reading.sound(), passage.end() + 0.01, passage.end() + 0.2))
                    .isLessThan(20);
            last = passage.end();
        }
        assertThat(reading.truth().seconds()).isGreaterThan(last);
    }

    @Test
    void onlyMisreadLinesDifferFromTheScript() {
        Composition reading = Composer.compose(VOICE, 0, Recipe.eventful(), 3);
        List<String> written =
                reading.script().lines().skip(4).filter(l -> !l.isEmpty()).toList();
        for (LineTruth line : reading.truth().lines()) {
            assertThat(written.get(line.line() - 1)
                            .equals(VOICE.utterances().get(line.line() - 1).text()))
                    .as("line %d is written as it is said", line.line())
                    .isEqualTo(line.outcome() != Outcome.MISREAD);
        }
    }

    @Test
    void aVoiceThatIsTooShortIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Composer.compose(VOICE, 30, Recipe.eventful(), 1));
    }

    private static double loudness(short[] sound, double from, double to) {
        return Sound.rms(Sound.asDoubles(Sound.part(sound, (int) (from * Sound.RATE), (int) (to * Sound.RATE))));
    }
}
