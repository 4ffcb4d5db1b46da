package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Finds the sample rate of recordings whose header was overwritten with zeros. */
final class TakeHeadersTest {
    @TempDir
    private Path folder;

    @Test
    void wholeHeadersAreLeftAlone() throws ProblemException {
        Path take = take(1, 44_100, 1);
        assertThat(TakeHeaders.of(List.of(), List.of(take))).isEqualTo(new TakeHeaders(Map.of(), List.of()));
    }

    /** The journal's length may be off by a few percent: what is heard last is not the last sample. */
    @ParameterizedTest
    @CsvSource({"44100, 2", "48000, 2", "16000, 2.06", "16000, 1.94", "8000, 2", "192000, 2"})
    void theRateFollowsFromTheLengthInTheJournal(int rate, double seconds) throws ProblemException, IOException {
        Path take = damaged(take(2, rate, seconds));
        List<SessionEvent> events = List.of(rolled(1, 0), cut(1, 30), rolled(2, 31), moved(32, 1, 2, 1), cut(2, 33));
        assertThat(TakeHeaders.of(events, List.of(take)).damaged()).isEqualTo(Map.of(take, rate));
    }

    @Test
    void aTakeThatWasBrokenOffIsAsLongAsWhatIsKnownOfIt() throws ProblemException, IOException {
        Path take = damaged(take(1, 22_050, 3));
        List<SessionEvent> brokenOff = List.of(rolled(1, 1), moved(4, 1, 2, 1));
        assertThat(TakeHeaders.of(brokenOff, List.of(take)).damaged()).isEqualTo(Map.of(take, 22_050));
        List<SessionEvent> another = List.of(rolled(1, 1), moved(4, 1, 2, 1), rolled(2, 4), cut(2, 60));
        assertThat(TakeHeaders.of(another, List.of(take)).damaged()).isEqualTo(Map.of(take, 22_050));
    }

    /** The first 24 bytes are gone; behind them stand the samples and the bytes a second, which agree. */
    @Test
    void theRateIsTakenFromWhatIsLeftOfTheHeader() throws ProblemException, IOException {
        Path take = take(1, 44_100, 1);
        byte[] bytes = Files.readAllBytes(take);
        Arrays.fill(bytes, 0, 24, (byte) 0);
        Files.write(take, bytes);
        assertThat(TakeHeaders.of(List.of(), List.of(take)).damaged()).isEqualTo(Map.of(take, 44_100));
        bytes[29] ^= 1;
        Files.write(take, bytes);
        assertThat(TakeHeaders.of(List.of(), List.of(take)).lost()).hasSize(1);
    }

    @Test
    void theRateOfAnotherTakeIsTakenIfTheJournalDoesNotSay() throws ProblemException, IOException {
        Path first = damaged(take(1, 24_000, 1));
        Path second = take(2, 24_000, 1);
        Path third = damaged(take(3, 24_000, 1));
        TakeHeaders found = TakeHeaders.of(List.of(rolled(1, 0), cut(1, 25)), List.of(first, second, third));
        assertThat(found).isEqualTo(new TakeHeaders(Map.of(first, 24_000, third, 24_000), List.of()));
    }

    @Test
    void saysWhichRecordingsAreLost() throws ProblemException, IOException {
        Path take = damaged(take(1, 16_000, 1));
        assertThat(TakeHeaders.of(List.of(), List.of(take)))
                .isEqualTo(new TakeHeaders(
                        Map.of(),
                        List.of("take-001.wav has no header, and nothing tells how many samples a second it has")));
    }

    @Test
    void writesTheHeaderThatWasThereAndKeepsTheDamagedOne() throws ProblemException, IOException {
        Path take = take(1, 16_000, 1);
        byte[] whole = Files.readAllBytes(take);
        damaged(take);
        Path copies = Files.createDirectory(folder.resolve("copies"));
        TakeHeaders headers = new TakeHeaders(Map.of(take, 16_000), List.of());
        headers.keep(copies);
        headers.write();
        assertThat(take).hasBinaryContent(whole);
        assertThat(copies.resolve("take-001.wav.header")).hasBinaryContent(new byte[WavHeader.BYTES]);
    }

    private Path take(int number, int rate, double seconds) {
        Path file = SessionFolder.takeFile(folder, number);
        Wav.write(file, rate, Wav.sine(200, 0.1, rate, seconds));
        return file;
    }

    private static Path damaged(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        Arrays.fill(bytes, 0, WavHeader.BYTES, (byte) 0);
        Files.write(file, bytes);
        return file;
    }
}
