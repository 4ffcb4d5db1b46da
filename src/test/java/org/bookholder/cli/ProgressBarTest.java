package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import org.bookholder.app.environment.Progress;
import org.junit.jupiter.api.Test;

final class ProgressBarTest {
    private static final long SECOND = 1_000_000_000L;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final AtomicLong now = new AtomicLong();

    @Test
    void showsHowFarItIsAndHowLongItStillTakesAndGoesAway() {
        try (ProgressBar bar = bar(true)) {
            bar.show(at(0, OptionalDouble.empty()));
            now.set(15 * SECOND);
            bar.show(at(0.1, OptionalDouble.of(135)));
        }
        String[] shown = bytes.toString(StandardCharsets.UTF_8).split("\r", -1);
        assertThat(shown[1]).startsWith("lesson-1.mp4  [..............................]   0 %");
        assertThat(shown[2]).startsWith("lesson-1.mp4  [###...........................]  10 %  2:15 left");
        assertThat(shown[3]).isBlank().hasSizeGreaterThanOrEqualTo(shown[2].length());
    }

    @Test
    void doesNotFlicker() {
        try (ProgressBar bar = bar(true)) {
            bar.show(at(0.5, OptionalDouble.empty()));
            int before = bytes.size();
            now.set(SECOND / 10);
            bar.show(at(0.6, OptionalDouble.empty()));
            assertThat(bytes.size()).isEqualTo(before);
        }
    }

    @Test
    void saysNothingToAnotherProgram() {
        try (ProgressBar bar = bar(false)) {
            bar.show(at(0.5, OptionalDouble.empty()));
        }
        assertThat(bytes.size()).isZero();
    }

    private static Progress at(double done, OptionalDouble left) {
        return new Progress("lesson-1.mp4", done, left);
    }

    private ProgressBar bar(boolean console) {
        return new ProgressBar(new PrintStream(bytes, true, StandardCharsets.UTF_8), console, now::get);
    }
}
