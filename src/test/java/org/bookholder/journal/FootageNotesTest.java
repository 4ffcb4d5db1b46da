package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class FootageNotesTest {
    private static final PlacedFootage CAMERA = new PlacedFootage(
            new Footage(
                    Path.of("/shoot/L'\u00e9t\u00e9 \u30ec.MP4"),
                    s(60),
                    Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_29_97, true)),
                    Optional.of(new Footage.Sound(44_100, 2, "aac")),
                    Optional.of("10:20:30;12"),
                    Optional.empty(),
                    Optional.of(MORNING)),
            List.of(new Placement(2, s(100), -48_000, -12_345, s(101), s(150), 0.875)));
    private static final PlacedFootage RECORDER = new PlacedFootage(
            new Footage(
                    Path.of("/shoot/SND0001.WAV"),
                    s(90),
                    Optional.empty(),
                    Optional.of(new Footage.Sound(48_000, 1, "pcm_s24le")),
                    Optional.empty(),
                    Optional.of(s(43_200)),
                    Optional.empty()),
            List.of());

    @TempDir
    private Path folder;

    @Test
    void readsWhatItKept() throws ProblemException {
        assertThat(FootageNotes.read(folder)).isEmpty();
        FootageNotes.keep(folder, List.of(CAMERA, RECORDER));
        assertThat(FootageNotes.read(folder)).containsExactly(CAMERA, RECORDER);
    }

    @Test
    void replacesWhatIsKnownOfAFileAndKeepsTheOthers() throws ProblemException {
        FootageNotes.keep(folder, List.of(CAMERA, RECORDER));
        PlacedFootage again = new PlacedFootage(CAMERA.footage(), List.of());
        FootageNotes.keep(folder, List.of(again));
        assertThat(FootageNotes.read(folder)).containsExactly(RECORDER, again);
    }

    @Test
    void aPictureThatWasKeptWithoutASizeCountsAsNone() throws Exception {
        FootageNotes.keep(folder, List.of(CAMERA));
        Path file = folder.resolve("footage.json");
        String kept = Files.readString(file);
        assertThat(kept).contains("3840", "2160");
        for (String size : List.of("3840", "2160")) {
            Files.writeString(file, kept.replace(size, "0"));
            assertThat(FootageNotes.read(folder)).singleElement().satisfies(read -> {
                assertThat(read.footage().picture()).isEmpty();
                assertThat(read.footage().sound()).isEqualTo(CAMERA.footage().sound());
            });
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"{\"footage\":[{\"placements\":3", "", "null", "[]"})
    void saysThatTheNotesAreDamaged(String notes) throws Exception {
        Files.writeString(folder.resolve("footage.json"), notes);
        assertThatThrownBy(() -> FootageNotes.read(folder))
                .isInstanceOf(ProblemException.class)
                .hasMessage(folder.resolve("footage.json")
                        + ": cannot be understood; delete it and match the footage again");
    }
}
