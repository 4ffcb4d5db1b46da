package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reduced pictures with one fault each, 25 a second. */
final class PictureFinderTest {
    private static final int PIXELS = Film.Viewer.WIDTH * Film.Viewer.HEIGHT;

    private final List<byte[]> pictures = new ArrayList<>();

    @Test
    void nothingIsWrongWithAPictureThatMoves() {
        moves(100);
        assertThat(found()).isEmpty();
        pictures.clear();
        assertThat(found()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"12, 0", "13, 1"})
    void blackInsideIsAFaultIfItIsLongerThanHalfASecond(int black, int count) {
        moves(50);
        shows(black, 0);
        moves(50);
        assertThat(found())
                .isEqualTo(
                        count == 0
                                ? List.of("look black 2.000-2.480: black for 0.5 s")
                                : List.of("mend black 2.000-2.520: black for 0.5 s"));
    }

    @ParameterizedTest
    @CsvSource({"50, 0", "51, 1"})
    void twoSecondsOfBlackAtTheEndsAreUsual(int black, int count) {
        shows(black, 0);
        moves(100);
        shows(black, 0);
        assertThat(found()).hasSize(2 * count).allMatch(text -> text.startsWith("mend black"));
    }

    @Test
    void aFilmThatIsBlackThroughoutHasNoPicture() {
        shows(100, 0);
        assertThat(found()).containsExactly("mend black 0.000-4.000: the picture is black throughout");
    }

    @ParameterizedTest
    @CsvSource({"25, true", "26, false"})
    void blackIsWhatIsDarkerThanFilmBlackWithNoise(int value, boolean black) {
        moves(50);
        shows(20, value);
        moves(50);
        assertThat(found().stream().anyMatch(text -> text.contains("black"))).isEqualTo(black);
    }

    @ParameterizedTest
    @CsvSource({"75, 0", "76, 1"})
    void aPictureThatStandsStillForThreeSecondsIsAskedAbout(int still, int count) {
        moves(50);
        shows(still, 200);
        moves(50);
        assertThat(found())
                .hasSize(count)
                .allMatch(text -> text.equals("look still picture 2.000-5.040: the picture stands still for 3.0 s"));
    }

    @Test
    void aFrozenPictureAtTheEndIsFound() {
        moves(50);
        shows(100, 200);
        assertThat(found()).containsExactly("look still picture 2.000-6.000: the picture stands still for 4.0 s");
    }

    @Test
    void aStillThatIsMeantIsNoFinding() {
        moves(50);
        shows(100, 200);
        moves(50);
        assertThat(found(new Finding.Place(at(50), at(150)))).isEmpty();
        assertThat(found(new Finding.Place(at(50), at(120))))
                .as("it stands longer than it should")
                .hasSize(1);
        assertThat(found(new Finding.Place(at(0), at(30)))).hasSize(1);
    }

    /** A small thing that moves is no more than a part of the picture. */
    @Test
    void aSmallThingThatMovesIsMotion() {
        moves(50);
        for (int i = 0; i < 100; i++) {
            byte[] picture = filled(200);
            Arrays.fill(picture, i * Film.Viewer.WIDTH, i * Film.Viewer.WIDTH + 12, (byte) 0);
            pictures.add(picture);
        }
        moves(50);
        assertThat(found()).noneMatch(text -> text.contains("still picture"));
    }

    @ParameterizedTest
    @CsvSource({
        "1, one frame of something else",
        "2, 2 frames of something else",
        "3, 3 frames of something else",
        "4, ''"
    })
    void aShotOfOneToThreeFramesIsABlip(int frames, String what) {
        moves(50);
        shows(frames, 255);
        moves(50);
        double end = 2 + 0.04 * frames;
        assertThat(found())
                .isEqualTo(
                        what.isEmpty()
                                ? List.of()
                                : List.of(String.format(Locale.ROOT, "mend blips 2.000-%.3f: %s", end, what)));
    }

    @Test
    void aBlipAtTheBeginningOrTheEndIsFound() {
        shows(2, 255);
        moves(50);
        shows(1, 255);
        assertThat(found())
                .containsExactly(
                        "mend blips 0.000-0.080: 2 frames of something else",
                        "mend blips 2.080-2.120: one frame of something else");
    }

    /** The first or last pictures of a fade are black, as is a part of it. */
    @ParameterizedTest
    @ValueSource(ints = {10, 25, 50})
    void aFadeFromOrToBlackIsNoBlip(int frames) {
        fade(frames, true);
        moves(50);
        fade(frames, false);
        assertThat(found()).isEmpty();
    }

    @Test
    void aBlackPictureInADarkShotIsABlip() {
        shows(50, 40);
        shows(1, 16);
        shows(20, 40);
        assertThat(found()).containsExactly("mend blips 2.000-2.040: one frame of something else");
    }

    @Test
    void manyCutsInARowAreAnEffectAndNoBlip() {
        moves(50);
        for (int i = 0; i < 12; i++) {
            shows(1, i % 2 == 0 ? 255 : 90);
        }
        moves(50);
        assertThat(found()).isEmpty();
    }

    @Test
    void faultsOfAKindBeyondThirtyAreOnlyCounted() {
        for (int i = 0; i < 33; i++) {
            moves(20);
            shows(1, 255);
        }
        moves(20);
        assertThat(found()).hasSize(31).endsWith("look blips: 3 more of this kind");
    }

    private List<String> found(Finding.Place... stills) {
        Findings findings = new Findings();
        PictureFinder finder = new PictureFinder(ProfileForm.usual(), findings, List.of(stills));
        for (int i = 0; i < pictures.size(); i++) {
            finder.see(at(i), pictures.get(i));
        }
        finder.end(at(pictures.size()));
        return findings.all().stream().map(SoundFinderTest::described).toList();
    }

    private static StreamTime at(int frame) {
        return StreamTime.ofSeconds(frame / 25.0);
    }

    /** Pictures that differ a little each. */
    private void moves(int frames) {
        for (int i = 0; i < frames; i++) {
            pictures.add(filled(120 + 2 * (i % 2)));
        }
    }

    private void fade(int frames, boolean in) {
        for (int i = 0; i < frames; i++) {
            pictures.add(filled(16 + 104 * (in ? i : frames - 1 - i) / frames));
        }
    }

    private void shows(int frames, int value) {
        for (int i = 0; i < frames; i++) {
            pictures.add(filled(value));
        }
    }

    private static byte[] filled(int value) {
        byte[] picture = new byte[PIXELS];
        Arrays.fill(picture, (byte) value);
        return picture;
    }
}
