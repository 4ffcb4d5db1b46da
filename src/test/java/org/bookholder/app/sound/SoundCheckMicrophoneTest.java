package org.bookholder.app.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.bookholder.app.environment.Interruption;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundFinding.Kind;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.microphone.Microphone;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.Stereo;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.UntoldSoundCheck;
import org.bookholder.testing.VirtualMicrophone;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sound check through a virtual microphone with two channels. */
final class SoundCheckMicrophoneTest {
    private static final String SINK = "bookholdertwo";
    private static final int RATE = 16_000;
    private static final int ROOM_SECONDS = 3;
    private static final int VOICE_SECONDS = 8;

    @TempDir
    private Path folder;

    /** Null where there is no sound server, for then no test runs. */
    private VirtualMicrophone plugged;

    @BeforeEach
    void plugIn() throws IOException {
        plugged = VirtualMicrophone.plugIn(SINK, 2);
    }

    @AfterEach
    void pullOut() throws IOException {
        if (plugged != null) {
            plugged.close();
        }
    }

    /** The mix of both is silence, which must not be taken for a switch or a cable that is off. */
    @Test
    void twoChannelsOutOfPhaseAreCalledThat() throws ProblemException, IOException, InterruptedException {
        short[] voice = Wav.demo(ROOM_SECONDS + 2 + VOICE_SECONDS + 5);
        Random random = new Random(4);
        short[] inverted = new short[voice.length];
        for (int i = 0; i < voice.length; i++) {
            voice[i] = i < (ROOM_SECONDS + 1) * RATE ? (short) (5 * random.nextGaussian()) : voice[i];
            inverted[i] = (short) -voice[i];
        }
        SoundCheck check = check(Stereo.write(folder.resolve("opposed.wav"), RATE, voice, inverted));
        assertThat(check.findings()).extracting(SoundFinding::kind).contains(Kind.SIDES_OPPOSED, Kind.ECHO);
        assertThat(check.findings()).extracting(SoundFinding::kind).doesNotContain(Kind.NO_SIGNAL, Kind.NO_VOICE);
    }

    private SoundCheck check(Path file) throws ProblemException, IOException, InterruptedException {
        FakeEquipment equipment = new FakeEquipment();
        AudioSource microphone =
                Microphone.openWithSides(Optional.of(SINK), Microphone.PREFERRED_RATE, System::nanoTime);
        equipment.hasMicrophone(microphone);
        Process player = new ProcessBuilder("paplay", "--device=" + SINK, file.toString()).start();
        try {
            return new SoundCheckService(
                            StoredExamples.here(folder, equipment), new UntoldSoundCheck(), Interruption.NONE)
                    .check(new SoundCheckRequest(
                            ROOM_SECONDS, VOICE_SECONDS, Optional.of(SINK), Optional.of(SINK), Optional.empty()));
        } finally {
            player.destroy();
        }
    }
}
