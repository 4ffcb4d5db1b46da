package org.bookholder.view.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.view.layout.Geometry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source of the formula and of 16, 20 and 22 minutes: NUREG-0700 rev. 2, item 1.3.1-4; heights computed from it. */
final class TypeSizeTest {
    @ParameterizedTest
    @CsvSource({
        "500, 16, 2.327", "500, 20, 2.909", "500, 22, 3.200",
        "600, 16, 2.792", "600, 20, 3.491", "600, 22, 3.840",
        "1500, 16, 6.981", "1500, 20, 8.726", "1500, 22, 9.599",
        "2000, 16, 9.308", "2000, 20, 11.635", "2000, 22, 12.799",
        "3000, 16, 13.962", "3000, 20, 17.453", "3000, 22, 19.198"
    })
    void givesTheCapitalHeightOfAnAngle(double distance, double minutes, double height) {
        assertThat(TypeSize.capitalHeight(distance, minutes)).isCloseTo(height, within(0.001));
        assertThat(TypeSize.arcMinutes(distance, height)).isCloseTo(minutes, within(0.01));
    }

    @Test
    void sizesTheTypeSoThatCapitalsHaveTheWantedHeight() {
        WindowSettings settings = WindowSettings.defaults().withDistance(2000).withScreenHeight(270);
        Geometry geometry = Geometry.of(settings, 0, 1080, 1920, 1080);
        double capital = geometry.em() * TypeSize.CAPITAL_EMS * 270 / 1080;
        assertThat(TypeSize.arcMinutes(2000, capital)).isCloseTo(WindowSettings.DEFAULT_ARC_MINUTES, within(0.01));
    }

    @Test
    void defaultsAreAboveThePreferredMinutesAndBelowTheMost() {
        assertThat(WindowSettings.DEFAULT_ARC_MINUTES).isBetween(22.0, TypeSize.MOST_ARC_MINUTES);
    }

    /**
     * NUREG-0700 rev. 2, item 1.3.1-4: 20 to 22 minutes preferred. Screens: 24 inches, a 4K screen of 27, one of 43, and a
     * tablet of 11; each as wide as 16 by 9.
     */
    @ParameterizedTest
    @CsvSource({
        "1500, 34, 300, 1080", "2500, 34, 300, 1080", "1500, 20, 300, 1080", "3000, 30, 300, 1080",
        "1500, 34, 336, 2160", "2500, 34, 336, 2160", "1500, 34, 535, 2160", "2500, 34, 535, 2160",
        "1500, 34, 137, 1080", "600, 34, 137, 1080"
    })
    void figuresAndAdviceReachThePreferredSize(double distance, double minutes, double millimetres, int pixels) {
        WindowSettings settings =
                WindowSettings.defaults().withDistance(distance).withArcMinutes(minutes);
        Geometry geometry = Geometry.of(settings, millimetres, pixels, pixels * 16 / 9, pixels);
        for (double size : new double[] {geometry.small(), geometry.said()}) {
            double capital = size * TypeSize.CAPITAL_EMS * millimetres / pixels;
            assertThat(TypeSize.arcMinutes(distance, capital)).isGreaterThan(20 - 0.01);
            assertThat(size).isLessThanOrEqualTo(geometry.em() + 0.01);
        }
    }

    /** Where the screen is too small for the distance, everything is as large as the script. */
    @Test
    void figuresAreNeverLargerThanTheScript() {
        WindowSettings far = WindowSettings.defaults().withDistance(2500);
        Geometry geometry = Geometry.of(far, 137, 1080, 1920, 1080);
        assertThat(geometry.small()).isEqualTo(geometry.em());
        assertThat(geometry.said()).isEqualTo(geometry.em());
    }

    /** On a wide screen the figures stay near the text, not at its edges. */
    @Test
    void figuresStayNearTheText() {
        Geometry geometry = Geometry.of(WindowSettings.defaults(), 535, 2160, 3840, 2160);
        assertThat(geometry.columnLeft() - geometry.fieldLeft()).isBetween(0.0, 4.5 * geometry.em());
        assertThat(geometry.fieldRight() - geometry.columnRight()).isBetween(0.0, 4.5 * geometry.em());
        assertThat(geometry.fieldLeft()).isGreaterThan(0.15 * geometry.width());
    }

    @Test
    void saysWhichValueIsOutOfRange() {
        assertThatThrownBy(() -> TypeSize.capitalHeight(0, 20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("distance (0.0) must be positive");
    }
}
