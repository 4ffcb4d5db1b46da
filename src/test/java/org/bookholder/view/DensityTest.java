package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.TypeSize;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The same monitor, 340 mm high, with more and more pixels: what is seen stays as large as it was. Systems differ in whether a
 * unit of the screen is a pixel: the second and third column are a full-screen window's height in pixels and in units.
 */
final class DensityTest {
    private static final double MILLIMETRES = 340;

    @ParameterizedTest
    @CsvSource({
        "1.0, 1080, 1080",
        "1.5, 1620, 1080",
        "2.0, 2160, 1080",
        "1.5, 1620, 1620",
        "2.0, 2160, 2160",
        "1.25, 1350, 1080"
    })
    void capitalsAndRowsHaveTheSameSizeAtEveryDensity(double density, int pixels, int units) {
        int width = pixels * 16 / 9;
        Geometry geometry = full(pixels, width, Scene.Screen.pixels(pixels, units, units));
        Geometry plain = full(1080, 1920, 1080);
        double capital = geometry.em() * TypeSize.CAPITAL_EMS * MILLIMETRES / pixels;
        assertThat(TypeSize.arcMinutes(WindowSettings.defaults().distance(), capital))
                .isCloseTo(WindowSettings.DEFAULT_ARC_MINUTES, within(0.01));
        assertThat(geometry.columnWidth() / geometry.em()).isCloseTo(plain.columnWidth() / plain.em(), within(0.01));
        assertThat(geometry.small()).isCloseTo(density * plain.small(), within(0.01));
        assertThat(geometry.said()).isCloseTo(density * plain.said(), within(0.01));
        assertThat(geometry.eyeLine()).isCloseTo(density * plain.eyeLine(), within(0.01));
        assertThat(geometry.margin()).isCloseTo(density * plain.margin(), within(1.0));
    }

    /** A window of half the monitor's height: its type is as large as that of a full screen, if there is room. */
    @ParameterizedTest
    @CsvSource({"720, 720, 1440", "1080, 720, 1440", "1440, 720, 1440", "1440, 1440, 2880"})
    void aWindowHasTheTypeOfItsMonitor(int pixels, int units, int monitorUnits) {
        int whole = Scene.Screen.pixels(pixels, units, monitorUnits);
        assertThat(whole).isEqualTo(2 * pixels);
        Geometry geometry = full(pixels, pixels * 16 / 9, whole);
        double capital = geometry.em() * TypeSize.CAPITAL_EMS * MILLIMETRES / whole;
        assertThat(TypeSize.arcMinutes(WindowSettings.defaults().distance(), capital))
                .isCloseTo(WindowSettings.DEFAULT_ARC_MINUTES, within(0.01));
    }

    private static Geometry full(int height, int width, int monitorPixels) {
        return Geometry.of(WindowSettings.defaults(), MILLIMETRES, monitorPixels, width, height);
    }
}
