package org.bookholder.speech;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** What every {@link AudioSource} keeps to; each kind extends this. */
public abstract class AudioSourceContract {
    /** A source, newly opened, that has at least a second of sound to give. */
    protected abstract AudioSource open() throws Exception;

    /** Lets a little time pass between two reads, where the source needs it. */
    protected void pause() {}

    /** The blocks of at least {@code seconds}, or of all there is. */
    private List<AudioBlock> read(AudioSource source, double seconds) {
        List<AudioBlock> blocks = new ArrayList<>();
        while (blocks.isEmpty() || blocks.get(blocks.size() - 1).end().seconds() < seconds) {
            AudioRead read = source.read();
            if (read instanceof AudioRead.Samples samples) {
                blocks.add(samples.block());
            } else if (read instanceof AudioRead.NothingYet) {
                pause();
            } else {
                break;
            }
        }
        return blocks;
    }

    @Test
    void timesBeginAtZeroAndBlocksFollowOneAnother() throws Exception {
        try (AudioSource source = open()) {
            List<AudioBlock> blocks = read(source, 0.9);
            assertThat(blocks).isNotEmpty();
            StreamTime expected = StreamTime.ZERO;
            for (AudioBlock block : blocks) {
                assertThat(block.start().ticks()).isCloseTo(expected.ticks(), within(1L));
                expected = block.end();
            }
            assertThat(expected.seconds()).isGreaterThanOrEqualTo(0.9);
        }
    }

    @Test
    void allBlocksHaveTheRateOfTheSourceAndAreShort() throws Exception {
        try (AudioSource source = open()) {
            for (AudioBlock block : read(source, 0.5)) {
                assertThat(block.rate()).isEqualTo(source.rate());
                assertThat(block.samples().length).isLessThanOrEqualTo(source.rate() / 10);
            }
        }
    }

    @Test
    void hasANameForPeople() throws Exception {
        try (AudioSource source = open()) {
            assertThat(source.name()).isNotBlank();
        }
    }

    @Test
    void closingTwiceDoesNothingAndReadingThenIsAFault() throws Exception {
        AudioSource source = open();
        source.close();
        source.close();
        assertThrows(IllegalStateException.class, source::read);
    }
}
