package org.bookholder.speech.microphone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.AudioSourceContract;
import org.bookholder.testing.VirtualMicrophone;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On a virtual microphone of its own: a PulseAudio sink whose monitor is the microphone. */
final class MicrophoneTest extends AudioSourceContract {
    private static final String SINK = "bookholdertest";
    private static final String NAME = VirtualMicrophone.name(SINK);

    @TempDir
    private Path folder;

    @AutoClose
    private VirtualMicrophone plugged;

    @BeforeEach
    void plugIn() throws IOException {
        plugged = VirtualMicrophone.plugIn(SINK, 1);
    }

    @Override
    protected AudioSource open() throws ProblemException {
        return Microphone.open(Optional.of(SINK), Microphone.PREFERRED_RATE, System::nanoTime);
    }

    @Override
    protected void pause() {
        LockSupport.parkNanos(5_000_000L);
    }

    @Test
    void listsMicrophonesByName() {
        assertThat(Microphone.names()).contains(NAME);
    }

    @Test
    void deliversTheSoundPlayedIntoIt() throws InterruptedException, Exception {
        Path file = Wav.write(folder.resolve("tone.wav"), 48_000, Wav.sine(1_000, 0.5, 48_000, 1.5));
        try (AudioSource source = open()) {
            Process player = new ProcessBuilder("paplay", "--device=" + SINK, file.toString()).start();
            List<AudioBlock> blocks = new ArrayList<>();
            while (blocks.isEmpty() || blocks.get(blocks.size() - 1).end().seconds() < 3) {
                if (source.read() instanceof AudioRead.Samples read) {
                    blocks.add(read.block());
                } else {
                    pause();
                }
            }
            assertThat(player.waitFor()).isZero();
            assertThat(cycles(blocks)).isBetween(1_400, 1_600);
        }
    }

    /** Upward passages through half of the tone's peak after one below the opposite: each cycle has one. */
    private static int cycles(List<AudioBlock> blocks) {
        int count = 0;
        boolean low = true;
        for (AudioBlock block : blocks) {
            for (short sample : block.samples()) {
                if (low && sample > 8_192) {
                    count++;
                    low = false;
                } else if (sample < -8_192) {
                    low = true;
                }
            }
        }
        return count;
    }

    @Test
    void anUnknownNameIsAProblem() {
        ProblemException problem = assertThrows(
                ProblemException.class, () -> Microphone.open(Optional.of("no such thing"), 48_000, System::nanoTime));
        assertThat(problem).hasMessageContaining("no such microphone").hasMessageContaining(NAME);
    }

    /** PulseAudio goes on with another microphone when one is gone; time is the test's own. */
    @Test
    void saysWhichMicrophoneIsHeardWhenTheSystemMovesTheStream() throws InterruptedException, Exception {
        AtomicLong now = new AtomicLong();
        try (AudioSource source = Microphone.open(Optional.of(SINK), Microphone.PREFERRED_RATE, now::get)) {
            assertThat(source.read()).isNotNull();
            assertThat(source.name()).isEqualTo(NAME);
            plugged.close();
            for (int i = 0; i < 1_000 && Microphone.names().contains(NAME); i++) {
                pause();
            }
            now.set(2_100_000_000L);
            AudioRead read = source.read();
            if (read instanceof AudioRead.Gone) {
                assertThat(source.name()).isEqualTo(NAME);
            } else {
                assertThat(source.name()).isNotEqualTo(NAME).isIn(Microphone.names());
            }
        }
    }

    @Test
    void theOneThatWasOpenedIsHeardAsLongAsItIsThere() {
        List<String> both = List.of("Desk", "Laptop");
        assertThat(Microphone.nowFrom("Desk", both, "Laptop")).isEqualTo("Desk");
        assertThat(Microphone.nowFrom("Desk", List.of("Laptop"), "Laptop")).isEqualTo("Laptop");
        assertThat(Microphone.nowFrom("Desk", List.of("Laptop"), "")).isEqualTo("Desk");
    }
}
