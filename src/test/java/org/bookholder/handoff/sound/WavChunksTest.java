package org.bookholder.handoff.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;

/** Sizes of a RIFF file are unsigned numbers of 32 bits (IBM and Microsoft 1991). */
final class WavChunksTest {
    private static final int RATE = 48_000;

    /** RIFF's own size counts all but the first eight bytes: "WAVE", fmt (24), the head of data (8), the samples. */
    private static final long MOST = (0xFFFF_FFFFL - 36) / 2;

    @Test
    void theLongestFileThereCanBeHasSizesBeyond31Bits() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        WavChunks.begin(out, RATE, MOST, List.of());
        ByteBuffer head = ByteBuffer.wrap(out.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(Integer.toUnsignedLong(head.getInt(4))).isEqualTo(36 + 2 * MOST);
        assertThat(Integer.toUnsignedLong(head.getInt(40))).isEqualTo(2 * MOST);
    }

    @Test
    void aLongerOneIsRefusedBeforeAnythingIsWritten() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThatThrownBy(() -> WavChunks.begin(out, RATE, MOST + 1, List.of()))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining(
                        "a WAV file holds 4 GB at most, which 12 hours at 48000 Hz are beyond; leave the sound out of the hand-off");
        assertThat(out.size()).isZero();
    }

    @Test
    void itsOtherChunksCountToo() {
        WavChunks.Chunk note = new WavChunks.Chunk("iXML", new byte[3]);
        assertThatThrownBy(() -> WavChunks.begin(new ByteArrayOutputStream(), RATE, MOST - 5, List.of(note)))
                .isInstanceOf(ProblemException.class);
    }
}
