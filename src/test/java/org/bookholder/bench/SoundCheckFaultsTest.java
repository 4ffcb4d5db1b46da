package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.SoundCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** A short form of the table in docs/checks.md, with the demo's reading, through the sound check's service. */
final class SoundCheckFaultsTest {
    private static final Path READING =
            Path.of(System.getProperty("bookholder.home")).resolve("demo-scripts/lesson-1.wav");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @EnumSource
    void isFoundAndNothingElseIsFoundInCleanSound(CheckedFault fault) throws ProblemException {
        SoundCheck check = new SoundCheckFaults(folder).check(fault, voice());
        if (fault.clean()) {
            assertThat(SoundCheckFaults.wrong(check)).isEmpty();
        } else {
            assertThat(fault.found(check)).as("%s", check).isTrue();
        }
    }

    /**
     * Reverberation time from speech alone, beside that of the room's response by ISO 3382-2. Where the room is louder than the voice it
     * is near; a listener hears less than a tenth of difference up to half a second, and the verdict has steps of 0.3 s.
     */
    @ParameterizedTest
    @CsvSource({"0.2, 0, 0.08", "0.3, 0, 0.08", "0.5, 0, 0.1", "0.5, -5, 0.1", "0.8, -5, 0.15"})
    void theRoomsReverberationIsHeardInTheVoice(double seconds, double direct, double near) throws ProblemException {
        MadeRoom room = new MadeRoom(seconds, direct);
        double byStandard = MadeRoom.byStandard(room.response(PlantedFaults.RATE, 7), PlantedFaults.RATE);
        assertThat(byStandard).isCloseTo(seconds, within(0.05));
        SoundCheck check = new SoundCheckFaults(folder).check(room, voice());
        assertThat(check.path().echo().orElseThrow()).isCloseTo(byStandard, within(near));
    }

    @Test
    void aVoiceWithoutARoomHasHardlyAnEcho() throws ProblemException {
        SoundCheck check = new SoundCheckFaults(folder).check(CheckedFault.NONE, voice());
        assertThat(check.path().echo().orElseThrow()).isLessThan(0.2);
    }

    private static float[] voice() throws ProblemException {
        List<float[]> pieces = SoundCheckFaults.pieces(READING);
        return pieces.get(0);
    }
}
