package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Made pictures at the borders of WCAG 2.2, success criterion 2.3.1, and its "general flash and red flash thresholds": no
 * more than three flashes in any second, of 10 % of the maximum luminance where the darker image is below 0.80, or over
 * no more than a quarter of a field of 341 by 256 of 1024 by 768 pixels.
 */
final class FlashFinderTest {
    private static final int COLUMNS = Film.Viewer.COLUMNS;
    private static final int ROWS = Film.Viewer.ROWS;
    private static final int BLACK = 0x000000;
    private static final int WHITE = 0xffffff;
    private static final int RED = 0xff0000;

    @ParameterizedTest
    @ValueSource(doubles = {3.5, 4, 5, 7.5, 10, 15, 30})
    void moreThanThreeFlashesASecondAreFound(double hertz) {
        List<Finding> found = find(60, 3, blinking(hertz, BLACK, WHITE));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).grade()).isEqualTo(Grade.MEND);
        assertThat(found.get(0).what()).startsWith("flashes more than three times a second");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 2, 2.5, 3})
    void threeFlashesASecondAreAllowed(double hertz) {
        assertThat(find(60, 4.5, blinking(hertz, BLACK, WHITE))).isEmpty();
        assertThat(find(25, 4.5, blinking(hertz, BLACK, WHITE))).isEmpty();
    }

    @Test
    void aLongRowOfAllowedFlashesIsWorthALook() {
        List<Finding> found = find(25, 9, blinking(2.5, BLACK, WHITE));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).grade()).isEqualTo(Grade.LOOK);
        assertThat(found.get(0).what()).startsWith("flashes two or three times a second");
    }

    @Test
    void threeFlashesInAMomentAreAllowedAndFourAreNot() {
        assertThat(find(30, 4, t -> plain(t > 1 && t < 1.6 && (int) (t * 10) % 2 == 0 ? WHITE : BLACK)))
                .isEmpty();
        assertThat(find(30, 4, t -> plain(t > 1 && t < 1.8 && (int) (t * 10) % 2 == 0 ? WHITE : BLACK)))
                .hasSize(1);
    }

    /** Relative luminances: 5a is 0.102, 55 is 0.091, e8 is 0.807 and e6 is 0.791. */
    @ParameterizedTest
    @CsvSource({"000000, 5a5a5a, 1", "000000, 555555, 0", "e8e8e8, ffffff, 0", "e6e6e6, ffffff, 1"})
    void onlyLargeChangesFromDarkEnoughAreFlashes(String dark, String light, int findings) {
        int one = Integer.parseInt(dark, 16);
        int other = Integer.parseInt(light, 16);
        assertThat(find(30, 3, blinking(5, one, other))).hasSize(findings);
    }

    @ParameterizedTest
    @CsvSource({"0.49, 0", "0.52, 1"})
    void aQuarterOfAFieldMayFlash(double side, int findings) {
        int wide = (int) Math.ceil(side * (COLUMNS / 3.0));
        int high = (int) Math.ceil(side * (ROWS / 3.0));
        assertThat(find(30, 3, t -> {
                    byte[] picture = plain(0x202020);
                    if (on(5, t)) {
                        fill(picture, 60, 30, wide, high, WHITE);
                    }
                    return picture;
                }))
                .hasSize(findings);
    }

    /** Their luminance differs by less than a tenth of the maximum. */
    @Test
    void redFlashesAreFoundWhereLightDoesNotChange() {
        List<Finding> found = find(30, 3, blinking(5, 0xff0000, 0x7f7f7f));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).what()).startsWith("red light flashes more than three times a second");
        assertThat(find(30, 3, blinking(3, 0xff0000, 0x7f7f7f))).isEmpty();
        assertThat(find(30, 3, blinking(5, 0xa06060, 0x7f7f7f))).isEmpty();
        assertThat(find(30, 3, blinking(5, 0x0000ff, 0x3a3a3a))).isEmpty();
    }

    @Test
    void redAndBlackFlashesAreOfBothKinds() {
        assertThat(find(30, 3, blinking(5, RED, BLACK)))
                .extracting(Finding::what)
                .anyMatch(what -> what.startsWith("flashes"))
                .anyMatch(what -> what.startsWith("red light flashes"));
        assertThat(find(30, 3, blinking(5, 0x180000, BLACK))).isEmpty();
    }

    @Test
    void fadesToAndFroCountAsMuchAsHardChanges() {
        assertThat(find(60, 3, t -> grey(0.5 - 0.5 * Math.cos(2 * Math.PI * 4 * t))))
                .hasSize(1);
        assertThat(find(60, 3, t -> grey(0.5 - 0.5 * Math.cos(2 * Math.PI * 2 * t))))
                .isEmpty();
    }

    @Test
    void cutsFadesAndMotionAreNoFlashes() {
        int[] shots = {0x303030, 0xc0c0c0, 0x5060a0, 0xe0e0e0, 0x201010};
        assertThat(find(25, 20, t -> plain(shots[(int) (t / 1.5) % shots.length])))
                .isEmpty();
        assertThat(find(25, 6, t -> grey(Math.min(1, t / 3)))).isEmpty();
        // A bright bar of a fifth of the width that crosses a dark picture once a second.
        assertThat(find(25, 6, t -> {
                    byte[] picture = plain(0x181818);
                    int from = (int) (t % 1 * COLUMNS * 0.8);
                    fill(picture, from, 0, COLUMNS / 5, ROWS, WHITE);
                    return picture;
                }))
                .isEmpty();
    }

    /** Glitter: each part changes five times a second, at a time of its own (WCAG 2.2 counts concurrent flashes). */
    @Test
    void partsThatChangeApartDoNotFlash() {
        double[] phases = new Random(1).doubles(COLUMNS * ROWS).toArray();
        assertThat(find(25, 4, t -> {
                    byte[] picture = plain(BLACK);
                    for (int part = 0; part < phases.length; part++) {
                        boolean bright = (5 * t + phases[part]) % 1 < 0.5;
                        Arrays.fill(picture, 3 * part, 3 * part + 3, (byte) (bright ? 200 : 20));
                    }
                    return picture;
                }))
                .isEmpty();
    }

    @Test
    void twoBurstsAreTwoFindingsAtTheirPlaces() {
        List<Finding> found =
                find(30, 12, t -> plain(((t > 3 && t < 5) || (t > 9 && t < 10)) && on(5, t) ? WHITE : BLACK));
        assertThat(found).hasSize(2);
        assertThat(found.get(0).place().orElseThrow().start().seconds()).isBetween(3.0, 3.2);
        assertThat(found.get(0).place().orElseThrow().end().seconds()).isBetween(4.8, 5.1);
        assertThat(found.get(1).place().orElseThrow().start().seconds()).isBetween(9.0, 9.2);
    }

    private static List<Finding> find(int rate, double seconds, DoubleFunction<byte[]> picture) {
        Findings findings = new Findings();
        FlashFinder finder = new FlashFinder(findings);
        for (int i = 0; i < seconds * rate; i++) {
            finder.see(StreamTime.ofSamples(i, rate), picture.apply((double) i / rate));
        }
        finder.end();
        return findings.all();
    }

    private static DoubleFunction<byte[]> blinking(double hertz, int one, int other) {
        byte[] off = plain(one);
        byte[] on = plain(other);
        return t -> on(hertz, t) ? on : off;
    }

    private static boolean on(double hertz, double t) {
        return (long) (2 * hertz * t + 1e-9) % 2 == 1;
    }

    /** A picture of one grey of this linear light. */
    private static byte[] grey(double light) {
        int value =
                (int) Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055));
        return plain(value << 16 | value << 8 | value);
    }

    private static byte[] plain(int rgb) {
        byte[] picture = new byte[3 * COLUMNS * ROWS];
        fill(picture, 0, 0, COLUMNS, ROWS, rgb);
        return picture;
    }

    private static void fill(byte[] picture, int column, int row, int columns, int rows, int rgb) {
        for (int y = row; y < row + rows; y++) {
            for (int x = column; x < Math.min(COLUMNS, column + columns); x++) {
                int part = 3 * (y * COLUMNS + x);
                picture[part] = (byte) (rgb >> 16);
                picture[part + 1] = (byte) (rgb >> 8);
                picture[part + 2] = (byte) rgb;
            }
        }
    }
}
