package org.bookholder.view.layout;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class GeometryTest {
    @ParameterizedTest
    @CsvSource({
        "1920, 1080, 0.333",
        "800, 600, 0.15",
        "700, 900, 0.1",
        "1080, 1920, 0.1",
        "320, 240, 0.1",
        "3840, 2160, 0.2"
    })
    void theRowBeingReadNeverTouchesTheFiguresAtTheTop(int width, int height, double eyeLine) {
        Geometry geometry = Geometry.of(WindowSettings.defaults().withEyeLine(eyeLine), 0, height, width, height);
        assertThat(geometry.headBottom()).isGreaterThan(geometry.headLine() + geometry.small() / 2);
        assertThat(geometry.headClear()).isGreaterThan(geometry.headBottom());
        assertThat(geometry.eyeLine() - geometry.headClear()).isGreaterThan(geometry.pitch() / 2);
        assertThat(geometry.eyeLine()).isGreaterThanOrEqualTo(eyeLine * height);
    }
}
