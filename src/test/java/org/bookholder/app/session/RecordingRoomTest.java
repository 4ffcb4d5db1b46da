package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RecordingRoomTest {
    @TempDir
    private Path folder;

    /** One channel of 16 bit is 5.76 MB a minute at 48 kHz, and 1.92 MB at 16 kHz; 0.12 MB of notes, and 16 MiB for the rest. */
    @ParameterizedTest
    @CsvSource({
        "0,             48000, less than a minute",
        "20_000_000,    48000, less than a minute",
        "23_000_000,    48000, about 1 minute",
        "100_000_000,   48000, about 14 minutes",
        "600_000_000,   48000, about 95 minutes",
        "2_000_000_000, 48000, about 5 hours",
        "600_000_000,   16000, about 4 hours",
        "5_000_000_000, 48000, more than 10 hours"
    })
    void saysHowLongItLasts(String bytes, int rate, String length) {
        assertThat(RecordingRoom.of(Long.parseLong(bytes.replace("_", "")), rate)
                        .sentence())
                .isEqualTo("The disk has room for " + length + " of recording.");
    }

    @Test
    void warnsOfLessThanTheLessonTakesAndOfLittle() {
        RecordingRoom room = new RecordingRoom(30 * 60);
        assertThat(room.warning(25 * 60)).isEmpty();
        assertThat(room.warning(30.5 * 60))
                .hasValue("the disk has room for about 30 minutes of recording, and this lesson takes about 31;"
                        + " free some space before you begin");
        assertThat(new RecordingRoom(19.9 * 60).warning(60))
                .hasValue("the disk has room for only about 19 minutes of recording; free some space before you begin");
        assertThat(new RecordingRoom(20 * 60).warning(60)).isEmpty();
    }

    @Test
    void asksTheFileSystemOfAFolderThatIsNotThereYet() throws Exception {
        long usable = Files.getFileStore(folder).getUsableSpace();
        assertThat(RecordingRoom.in(folder.resolve("a/b"), 48_000).orElseThrow().seconds())
                .isCloseTo(RecordingRoom.of(usable, 48_000).seconds(), withinPercentage(5));
    }
}
