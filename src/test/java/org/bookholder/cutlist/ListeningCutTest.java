package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

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
    void thereIsNoneWithoutRecordings() throws ProblemException {
        assertThat(ListeningCut.of(new CutList(List.of(clip(1, 1, 2, 2))), TakeSound.NONE))
                .isEmpty();
    }

    private static Clip clip(int line, double in, double out, double quietTo) {
        StreamTime from = s(in);
        return new Clip(1, from, s(out), from, s(quietTo), List.of(complete(1, 1, line, 3, in, out)), List.of());
    }
}
