package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Definitions: WCAG 2.2, relative luminance and contrast ratio; values computed from them. */
final class ContrastTest {
    @ParameterizedTest
    @CsvSource({
        "000000, ffffff, 21.0000",
        "777777, ffffff, 4.4781",
        "767676, ffffff, 4.5422",
        "959595, ffffff, 2.9953",
        "949494, ffffff, 3.0335",
        "595959, ffffff, 7.0047",
        "ff0000, ffffff, 3.9985",
        "0000ff, ffffff, 8.5925",
        "ffff00, 000000, 19.5560",
        "00ff00, 000000, 15.3040",
        "ffffff, 1e1e1e, 16.6712"
    })
    void givesTheRatioOfTwoColours(String one, String other, double ratio) {
        int a = Integer.parseInt(one, 16);
        int b = Integer.parseInt(other, 16);
        assertThat(Contrast.ratio(a, b)).isCloseTo(ratio, within(0.0001));
        assertThat(Contrast.ratio(b, a)).isEqualTo(Contrast.ratio(a, b));
    }

    @Test
    void givesTheLuminanceOfGrey() {
        assertThat(Contrast.luminance(0x808080)).isCloseTo(0.215861, within(0.000001));
    }

    /** WCAG 2.2, 1.4.6 (AAA): 7 to 1 for text of any size. */
    @Test
    void everyTextToReadHasAContrastOfSevenToOne() {
        List<Integer> toRead = List.of(
                Palette.COMING,
                Palette.DIRECTION,
                Palette.FIGURE,
                Palette.ASKING,
                Palette.FOOTLIGHT,
                Palette.DOG_EAR,
                Palette.FAST,
                Palette.SLOW,
                Palette.ON_PACE);
        assertThat(toRead)
                .allSatisfy(
                        rgb -> assertThat(Contrast.ratio(rgb, Palette.GROUND)).isGreaterThanOrEqualTo(7));
    }

    /** WCAG 2.2, 1.4.3 (AA): 4.5 to 1; words that were spoken may be needed again after a slip. */
    @Test
    void spokenWordsStayLegible() {
        assertThat(Contrast.ratio(Palette.SPOKEN, Palette.GROUND)).isGreaterThanOrEqualTo(4.5);
    }
}
