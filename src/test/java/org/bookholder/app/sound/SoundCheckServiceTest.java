package org.bookholder.app.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.SoundCheck;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SoundCheckServiceTest {
    private static final int RATE = 16_000;

    @TempDir
    private Path folder;

    private final List<String> told = new ArrayList<>();
    private Environment here;

    @BeforeEach
    void lookAround() {
        here = StoredExamples.here(folder);
    }

    @Test
    void measuresARecordingWithoutGivingInstructions() throws ProblemException {
        SoundCheck check = service().check(recording(12));
        assertThat(check.voice().peak()).isBetween(-41.0, -39.0);
        assertThat(told).containsExactly("begins check.wav");
    }

    @Test
    void refusesARecordingWithTooLittleVoice() {
        assertThatThrownBy(() -> service().check(recording(6)))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("is shorter than 5 s of room and 3 s of voice");
    }

    @Test
    void saysThatThereIsNoMicrophone() {
        SoundCheckRequest request = new SoundCheckRequest(5, 5, Optional.empty(), Optional.empty(), Optional.empty());
        assertThatThrownBy(() -> service().check(request))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("there is no microphone");
        assertThat(told).isEmpty();
    }

    private SoundCheckService service() {
        return new SoundCheckService(here, new Told(), Interruption.NONE);
    }

    private SoundCheckRequest recording(double seconds) {
        Path file = Wav.write(folder.resolve("check.wav"), RATE, Wav.sine(200, 0.01, RATE, seconds));
        return new SoundCheckRequest(5, 5, Optional.empty(), Optional.empty(), Optional.of(file));
    }

    private final class Told implements SoundCheckListener {
        @Override
        public void begins(String source) {
            told.add("begins " + source);
        }

        @Override
        public void measuresRoom(double seconds) {
            told.add("room " + seconds);
        }

        @Override
        public void measuresVoice(double seconds) {
            told.add("voice " + seconds);
        }
    }
}
