package org.bookholder.handoff.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.cutlist.ListeningCut;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.wav.WavHeader;
import org.junit.jupiter.api.Test;

final class ListenPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new ListenPart();
    }

    @Test
    void joinsTheChosenAttemptsInOneFile() throws Exception {
        HandOff handOff = ExampleHandOff.plain();
        byte[] file = Objects.requireNonNull(files(handOff).get("lesson-listen.wav"));
        ListeningCut cut = ListeningCut.of(handOff.cut(), handOff.sound()).orElseThrow();
        assertThat(Arrays.copyOf(file, WavHeader.BYTES))
                .isEqualTo(WavHeader.of(cut.rate(), cut.samples() * WavHeader.BYTES_PER_SAMPLE));
        ByteBuffer data = ByteBuffer.wrap(file, WavHeader.BYTES, file.length - WavHeader.BYTES)
                .order(ByteOrder.LITTLE_ENDIAN);
        for (int piece = 0; piece < cut.pieces(); piece++) {
            for (short sample : cut.piece(piece)) {
                assertThat(data.getShort()).isEqualTo(sample);
            }
        }
        assertThat(data.hasRemaining()).isFalse();
    }

    @Test
    void nothingToListenToIsNoFile() throws Exception {
        assertThat(files(ExampleHandOff.empty())).isEmpty();
    }

    @Test
    void takesWithoutSoundAreNamed() {
        HandOff silent = ExampleHandOff.withSound((take, from, to) -> Optional.empty());
        assertThatThrownBy(() -> part().files(silent).get(0).content().write(new ByteArrayOutputStream()))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("none of the takes was recorded");
    }
}
