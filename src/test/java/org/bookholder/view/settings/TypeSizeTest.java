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

    @Test
    void figuresAtTheEdgesReachTheLeastSizeForText() {
        Geometry geometry = Geometry.of(WindowSettings.defaults(), 300, 1080, 1920, 1080);
        double figure = geometry.small() * TypeSize.CAPITAL_EMS * 300 / 1080;
        assertThat(TypeSize.arcMinutes(WindowSettings.defaults().distance(), figure))
                .isGreaterThanOrEqualTo(14);
    }

    /** NUREG-0700 rev. 2, item 1.3.1-4: 16 minutes or more for text; the script itself at the 20 minutes preferred, or more. */
    @ParameterizedTest
    @CsvSource({"1500, 20", "1500, 34", "1500, 45", "3000, 20", "3000, 34"})
    void messagesAreLegibleFromTheScriptsDistance(double distance, double minutes) {
        WindowSettings settings =
                WindowSettings.defaults().withDistance(distance).withArcMinutes(minutes);
        Geometry geometry = Geometry.of(settings, 300, 1080, 1920, 1080);
        double capital = geometry.said() * TypeSize.CAPITAL_EMS * 300 / 1080;
        assertThat(TypeSize.arcMinutes(distance, capital)).isGreaterThan(TypeSize.LEAST_ARC_MINUTES - 0.01);
        assertThat(geometry.said()).isBetween(0.59 * geometry.em(), 0.81 * geometry.em());
    }

    @Test
    void saysWhichValueIsOutOfRange() {
        assertThatThrownBy(() -> TypeSize.capitalHeight(0, 20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("distance (0.0) must be positive");
    }
}
