package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ListeningCutTest {
    private static final int RATE = 8000;

    /** Every sample holds its own hundredth of a second, so that it tells where it comes from. */
    private static final TakeSound COUNTING = (take, from, to) -> {
        short[] samples = new short[(int) to.since(from).samples(RATE)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) ((from.samples(RATE) + i) / 80);
        }
        return samples.length == 0 ? Optional.empty() : Optional.of(new AudioBlock(from, RATE, samples));
    };

    @Test
    void joinsClipsByShortFadesAndFillsGapsWithTheRoom() throws ProblemException {
        CutList cut = new CutList(List.of(clip(1, 1, 2, 2.2), new Gap(2, s(0.5), List.of()), clip(3, 5, 6, 6)));
        ListeningCut heard = ListeningCut.of(cut, COUNTING).orElseThrow();
        assertThat(heard.rate()).isEqualTo(RATE);
        assertThat(heard.pieces()).isEqualTo(3);
        assertThat(heard.samples()).isEqualTo(20_000);
        short[] first = heard.piece(0);
        assertThat(first).hasSize(8000);
        assertThat(first[0]).isLessThan((short) 2);
        assertThat(first[80]).isEqualTo((short) 101);
        short[] gap = heard.piece(1);
        assertThat(gap).hasSize(4000);
        // The room is that of 2.0 to 2.2 s, to and fro.
        for (short sample : gap) {
            assertThat(sample).isBetween((short) 199, (short) 220);
        }
        short[] last = heard.piece(2);
        assertThat(last[0]).isBetween((short) 190, (short) 230);
        assertThat(last[80]).isEqualTo((short) 501);
        assertThat(last[7999]).isEqualTo((short) 599);
    }

    @Test
    void aClipFadesInEvenly() throws ProblemException {
        TakeSound even = (take, from, to) -> {
            short[] samples = new short[(int) to.since(from).samples(RATE)];
            Arrays.fill(samples, (short) 8000);
            return Optional.of(new AudioBlock(from, RATE, samples));
        };
        short[] heard = ListeningCut.of(new CutList(List.of(clip(1, 1, 2, 2))), even)
                .orElseThrow()
                .piece(0);
        for (int i = 0; i < 80; i++) {
            assertThat(heard[i]).isEqualTo((short) (100 * i + 50));
        }
        assertThat(heard[80]).isEqualTo((short) 8000);
    }

    @Test
    void aLongClipIsWhole() throws ProblemException {
        short[] heard = ListeningCut.of(new CutList(List.of(clip(1, 1, 131.5, 131.5))), COUNTING)
                .orElseThrow()
                .piece(0);
        assertThat(heard).hasSize(1_044_000);
        for (int second = 1; second <= 130; second++) {
            assertThat(heard[second * RATE]).isEqualTo((short) ((second + 1) * 100));
        }
        assertThat(heard[1_043_999]).isEqualTo((short) 13_149);
    }

    /** The third take is recorded at half the rate of the first, the second at twice that rate. */
    @ParameterizedTest
    @CsvSource({"2, 16000", "3, 4000"})
    void takesAtAnotherRatePlayAtTheFirstOnes(int other, int rate) throws ProblemException {
        TakeSound rising = (take, from, to) -> {
            int own = take == 1 ? RATE : rate;
            short[] samples = new short[(int) to.since(from).samples(own)];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (short) (i * RATE / own);
            }
            return Optional.of(new AudioBlock(from, own, samples));
        };
        CutList cut = new CutList(List.of(clip(1, 1, 2, 2), clip(other, 2, 5, 6, 6)));
        short[] heard = ListeningCut.of(cut, rising).orElseThrow().piece(1);
        assertThat(heard).hasSize(RATE);
        for (int i = 80; i < RATE - 1; i++) {
            assertThat(heard[i]).isEqualTo((short) i);
        }
    }

    @Test
    void theRoomIsTheLongestSilenceNextToAClip() throws ProblemException {
        CutList cut = new CutList(
                List.of(clip(1, 1, 2, 2.1), clip(2, 3, 4, 4.4), clip(3, 5, 6, 6.2), new Gap(4, s(0.5), List.of())));
        short[] gap = ListeningCut.of(cut, COUNTING).orElseThrow().piece(3);
        for (int i = 80; i < gap.length; i++) {
            assertThat(gap[i]).isBetween((short) 400, (short) 440);
        }
    }

    @Test
    void thereIsNoneWithoutRecordings() throws ProblemException {
        assertThat(ListeningCut.of(new CutList(List.of(clip(1, 1, 2, 2))), TakeSound.NONE))
                .isEmpty();
    }

    private static Clip clip(int line, double in, double out, double quietTo) {
        return clip(1, line, in, out, quietTo);
    }

    private static Clip clip(int take, int line, double in, double out, double quietTo) {
        StreamTime from = s(in);
        return new Clip(
                take,
                from,
                s(out),
                from,
                s(quietTo),
                List.of(complete(take, 1, line, 3, in, out)),
                List.of(),
                FilmChoices.Framing.PLANNED,
                Optional.empty());
    }
}
