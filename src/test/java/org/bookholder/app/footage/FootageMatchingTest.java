package org.bookholder.app.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bookholder.app.environment.Interruption;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
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

    /** The camera ran through takes 1 to 3; take 2 cannot be heard in it, take 3 is too short, take 4 was an hour later. */
    @Test
    void takesThatShouldBeInAFileAreNamedWithTheReason() throws Exception {
        int rate = 16_000;
        Path session = folder.resolve("session");
        double[] begins = {0, 18, 30, 31};
        double[] ends = {18, 30, 31, 43};
        long[] whens = {0, 20, 36, 3600};
        try (SessionFolder open = SessionFolder.create(session, new SessionLocks())) {
            open.journal().append(new SessionEvent.Opened(s(0), MORNING, "A lesson", "a.md", StoredExamples.script()));
            for (int i = 0; i < begins.length; i++) {
                Instant when = MORNING.plusSeconds(whens[i]);
                open.journal().append(rolled(i + 1, begins[i], when));
                open.journal().append(cut(i + 1, ends[i], when.plusSeconds(12)));
            }
        }
        short[] take = bursts(18 * rate);
        Wav.write(session.resolve("take-001.wav"), rate, take);
        for (int i = 1; i < begins.length; i++) {
            Wav.write(
                    session.resolve("take-00" + (i + 1) + ".wav"), rate, Wav.sine(300, 0.2, rate, ends[i] - begins[i]));
        }
        short[] heard = new short[60 * rate];
        System.arraycopy(take, 0, heard, 3 * rate, take.length);
        Path camera = Wav.write(folder.resolve("C0001.WAV"), rate, heard);
        FileMatch match = new FootageMatching(StoredExamples.here(folder), progress -> {}, Interruption.NONE)
                .match(session, List.of(camera), each -> {})
                .get(0);
        assertThat(match.missed().stream().map(MatchText::of))
                .containsExactly(
                        "take 2 (12 s): not found in it, though the file ran then; listen to it at about 0:23:"
                                + " the voice may be too faint there, or drowned",
                        "take 3 (1 s): not found in it; it is too short to be compared");
    }

    /** Takes of a pickup round lie between the pieces of a long file that are compared. The session's clock was off by 40 s since take 1. */
    @Test
    void shortTakesAreLookedForWhereTheSessionsClockPutsThem() throws Exception {
        int rate = 16_000;
        int[] lengths = {70, 5, 6};
        int[] places = {30, 361, 520};
        Path session = folder.resolve("session");
        short[] heard = new short[600 * rate];
        try (SessionFolder open = SessionFolder.create(session, new SessionLocks())) {
            open.journal().append(new SessionEvent.Opened(s(0), MORNING, "A lesson", "a.md", StoredExamples.script()));
            int begin = 0;
            for (int i = 0; i < lengths.length; i++) {
                Instant when = MORNING.plusSeconds(places[i] - (i == 0 ? 0 : 40));
                open.journal().append(rolled(i + 1, begin, when));
                begin += lengths[i];
                open.journal().append(cut(i + 1, begin, when.plusSeconds(lengths[i])));
                short[] said = bursts(lengths[i] * rate, i);
                Wav.write(session.resolve("take-00" + (i + 1) + ".wav"), rate, said);
                System.arraycopy(said, 0, heard, places[i] * rate, said.length);
            }
        }
        Path camera = Wav.write(folder.resolve("C0002.WAV"), rate, heard);
        FileMatch match = new FootageMatching(StoredExamples.here(folder), progress -> {}, Interruption.NONE)
                .match(session, List.of(camera), each -> {})
                .get(0);
        assertThat(match.placed().orElseThrow().placements())
                .extracting(place -> Math.round(place.start() / 48.0))
                .containsExactly(30_000L, 361_000L, 520_000L);
    }

    /** Noise that comes and goes like syllables, always the same. */
    private static short[] bursts(int length) {
        return bursts(length, 7);
    }

    private static short[] bursts(int length, int seed) {
        Random random = new Random(seed);
        short[] samples = new short[length];
        for (int i = 0; i < length; i++) {
            double loud = Math.max(0, Math.sin(i / 1700.0) + 0.7 * Math.sin(i / 5300.0));
            samples[i] = (short) (6000 * loud * random.nextGaussian() / 2);
        }
        return samples;
    }
}
