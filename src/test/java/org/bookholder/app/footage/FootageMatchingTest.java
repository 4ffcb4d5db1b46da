package org.bookholder.app.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bookholder.app.environment.Interruption;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Stereo;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FootageMatchingTest {
    @TempDir
    private Path folder;

    @Test
    void reportsEachFileThatCannotBeMatchedAndContinues() throws ProblemException, IOException {
        Path session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        Path letter = Files.writeString(folder.resolve("letter.mov"), "Dear aunt");
        Path none = folder.resolve("none.mov");
        List<FileMatch> told = new ArrayList<>();
        List<FileMatch> matches = new FootageMatching(StoredExamples.here(folder), progress -> {}, Interruption.NONE)
                .match(session, List.of(none, letter), told::add);
        assertThat(matches).isEqualTo(told).extracting(FileMatch::file).containsExactly(none, letter);
        assertThat(matches)
                .allMatch(match -> match.placed().isEmpty() && match.problem().isPresent());
        assertThat(FootageNotes.read(session)).isEmpty();
    }

    /** Two microphones in opposite phase: in the mix of both nothing is left of the voice. */
    @Test
    void eachChannelOfARecorderIsACandidate() throws Exception {
        Path session = folder.resolve("session");
        StoredExamples.write(session, folder.resolve("lesson.md").toString());
        int rate = 16_000;
        short[] take = bursts(18 * rate);
        Wav.write(session.resolve("take-001.wav"), rate, take);
        short[] voice = new short[take.length + 5 * rate];
        System.arraycopy(take, 0, voice, 3 * rate, take.length);
        short[] opposite = new short[voice.length];
        for (int i = 0; i < voice.length; i++) {
            opposite[i] = (short) -voice[i];
        }
        Path recorder = Stereo.write(folder.resolve("REC01.WAV"), rate, voice, opposite);
        List<FileMatch> matches = new FootageMatching(StoredExamples.here(folder), progress -> {}, Interruption.NONE)
                .match(session, List.of(recorder), match -> {});
        assertThat(matches.get(0).placed().orElseThrow().placements().get(0).start() / 48_000.0)
                .isCloseTo(3, within(0.001));
    }

    /** Noise that comes and goes like syllables, always the same. */
    private static short[] bursts(int length) {
        Random random = new Random(7);
        short[] samples = new short[length];
        for (int i = 0; i < length; i++) {
            double loud = Math.max(0, Math.sin(i / 1700.0) + 0.7 * Math.sin(i / 5300.0));
            samples[i] = (short) (6000 * loud * random.nextGaussian() / 2);
        }
        return samples;
    }
}
