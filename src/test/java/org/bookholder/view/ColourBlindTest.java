package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.view.cue.Palette;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The cues as seen with the three common kinds of colour blindness. The matrices, for linear sRGB at full severity, are
 * those of Machado, Oliveira and Fernandes 2009, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency" (doi 10.1109/TVCG.2009.113), compared with their copy in the R package prismatic, R/color-blindness.R. Colours
 * are told apart by CIE 1976 L*a*b* distance; its formulas and the white point D65 are from memory.
 */
final class ColourBlindTest {
    /** Two large patches side by side are told apart from about 2 on; at the edge of the eye that is not enough. */
    private static final double CLEARLY = 12;

    enum Eye {
        USUAL,
        PROTANOPE,
        DEUTERANOPE,
        TRITANOPE;

        private double[] matrix() {
            return switch (this) {
                case USUAL -> new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1};
                case PROTANOPE ->
                    new double[] {
                        0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998
                    };
                case DEUTERANOPE ->
                    new double[] {
                        0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881
                    };
                case TRITANOPE ->
                    new double[] {
                        1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900
                    };
            };
        }

        /** Lightness and the two colour axes of what is seen. */
        double[] lab(int rgb) {
            double[] in = {linear(rgb >> 16 & 255), linear(rgb >> 8 & 255), linear(rgb & 255)};
            double[] seen = new double[3];
            for (int row = 0; row < 3; row++) {
                for (int column = 0; column < 3; column++) {
                    seen[row] += matrix()[3 * row + column] * in[column];
                }
                seen[row] = Math.max(0, Math.min(1, seen[row]));
            }
            double x = cube((0.4124 * seen[0] + 0.3576 * seen[1] + 0.1805 * seen[2]) / 0.9505);
            double y = cube(0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2]);
            double z = cube((0.0193 * seen[0] + 0.1192 * seen[1] + 0.9505 * seen[2]) / 1.0890);
            return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
        }

        private static double linear(int channel) {
            double c = channel / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }

        private static double cube(double share) {
            return share > 0.008856 ? Math.cbrt(share) : 7.787 * share + 16 / 116.0;
        }
    }

    @ParameterizedTest
    @EnumSource
    void fastSlowAndOnPaceDifferInColourAsWellAsShape(Eye eye) {
        assertThat(distance(eye, Palette.FAST, Palette.SLOW)).isGreaterThan(2 * CLEARLY);
        assertThat(distance(eye, Palette.FAST, Palette.ON_PACE)).isGreaterThan(CLEARLY);
        assertThat(distance(eye, Palette.SLOW, Palette.ON_PACE)).isGreaterThan(CLEARLY);
    }

    @ParameterizedTest
    @EnumSource
    void directionsAndPickupsDifferFromTheText(Eye eye) {
        assertThat(distance(eye, Palette.DIRECTION, Palette.COMING)).isGreaterThan(CLEARLY);
        assertThat(distance(eye, Palette.DOG_EAR, Palette.GROUND)).isGreaterThan(4 * CLEARLY);
        assertThat(distance(eye, Palette.ASKING, Palette.FIGURE)).isGreaterThan(CLEARLY);
    }

    @ParameterizedTest
    @EnumSource
    void spokenLeadInAndRestingWordsDifferInLightness(Eye eye) {
        assertThat(eye.lab(Palette.COMING)[0] - eye.lab(Palette.LEAD_IN)[0]).isGreaterThan(CLEARLY);
        assertThat(eye.lab(Palette.LEAD_IN)[0] - eye.lab(Palette.SPOKEN)[0]).isGreaterThan(CLEARLY);
        assertThat(eye.lab(Palette.SPOKEN)[0] - eye.lab(Palette.RESTING)[0]).isGreaterThan(CLEARLY);
    }

    private static double distance(Eye eye, int one, int other) {
        double[] a = eye.lab(one);
        double[] b = eye.lab(other);
        return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }
}
