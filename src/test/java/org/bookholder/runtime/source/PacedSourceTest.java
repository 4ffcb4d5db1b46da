package org.bookholder.runtime.source;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;

final class PacedSourceTest {
    private static final int RATE = 16_000;

    private final FakeClock clock = new FakeClock();

    @Test
    void givesABlockWhenItsLastSampleHasSounded() {
        try (PacedSource source = new PacedSource(FakeAudioSource.of(RATE, new short[RATE / 10]), clock)) {
            assertThat(source.read()).isInstanceOf(AudioRead.NothingYet.class);
            clock.passMillis(39);
            assertThat(source.read()).isInstanceOf(AudioRead.NothingYet.class);
            clock.passMillis(1);
            assertThat(source.read()).isInstanceOf(AudioRead.Samples.class);
            assertThat(source.read()).isInstanceOf(AudioRead.NothingYet.class);
        }
    }

    @Test
    void timeStartsWithTheFirstReadAndNotWithTheOpening() {
        try (PacedSource source = new PacedSource(FakeAudioSource.of(RATE, new short[RATE / 10]), clock)) {
            clock.passMillis(5000);
            assertThat(source.read()).isInstanceOf(AudioRead.NothingYet.class);
        }
    }

    @Test
    void catchesUpAfterABusyMoment() {
        try (PacedSource source = new PacedSource(FakeAudioSource.of(RATE, new short[RATE / 10]), clock)) {
            source.read();
            clock.passMillis(100);
            assertThat(source.read()).isInstanceOf(AudioRead.Samples.class);
            assertThat(source.read()).isInstanceOf(AudioRead.Samples.class);
            assertThat(source.read()).isInstanceOf(AudioRead.Samples.class);
            assertThat(source.read()).isInstanceOf(AudioRead.Ended.class);
        }
    }
}
