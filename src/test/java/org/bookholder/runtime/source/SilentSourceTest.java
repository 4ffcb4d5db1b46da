package org.bookholder.runtime.source;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeClock;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class SilentSourceTest {
    private final FakeClock clock = new FakeClock();

    @Test
    void givesAsMuchSilenceAsTimeHasPassed() {
        SilentSource source = new SilentSource(16_000, clock);
        clock.passMillis(1000);
        StreamTime end = StreamTime.ZERO;
        int blocks = 0;
        while (source.read() instanceof AudioRead.Samples samples) {
            AudioBlock block = samples.block();
            assertThat(block.start()).isEqualTo(end);
            assertThat(block.samples()).containsOnly((short) 0);
            end = block.end();
            blocks++;
        }
        assertThat(blocks).isEqualTo(25);
        assertThat(end).isEqualTo(StreamTime.ofSeconds(1));
    }
}
