package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.testing.Needs;
import org.bookholder.view.layout.Face;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Glyphs and their places: marks, ligatures, other fonts, text from right to left. */
final class ShaperTest {
    private static final double SIZE = 64;

    private final Fonts fonts = new Fonts(SystemFonts::find);
    private final Shaper shaper = new Shaper(fonts);

    @AfterEach
    void tearDown() {
        fonts.close();
    }

    @Test
    void aLetterWithACombiningMarkIsTheComposedLetter() {
        assertThat(ids(shape("cafe\u0301"))).isEqualTo(ids(shape("café")));
        assertThat(shape("cafe\u0301").advance()).isCloseTo(shape("café").advance(), within(0.01));
    }

    /** Inter draws an arrow for a dash and a chevron (its feature calt). */
    @Test
    void charsThatBecomeOneGlyphShareItsPlace() {
        Shaper.Shaped arrow = shape("->");
        assertThat(arrow.places().left(0, 1)).isLessThan(arrow.places().left(1, 2));
        assertThat(arrow.places().right(1, 2)).isCloseTo(arrow.advance(), within(0.01));
        assertThat(ids(arrow))
                .isNotEqualTo(List.of(ids(shape("-")).get(0), ids(shape(">")).get(0)));
    }

    @Test
    void lettersAreKerned() {
        assertThat(shape("AVAVA").advance())
                .isLessThan(3 * shape("A").advance() + 2 * shape("V").advance());
    }

    @Test
    void aLetterThatInterLacksComesFromAnotherFont() {
        Needs.that(hasSystemFont("\u05d0"), "no font of this system has Hebrew");
        Shaper.Shaped shaped = shape("a \u05d0");
        assertThat(shaped.glyphs()).allMatch(glyph -> glyph.id() != 0);
        assertThat(fontsOf(shaped)).hasSize(2);
    }

    @Test
    void aLetterThatNoFontHasIsShownByItsNumber() {
        try (Fonts bare = new Fonts(List::of)) {
            Shaper alone = new Shaper(bare);
            Shaper.Shaped shaped = alone.shape("a\u4e2db", Face.READING, SIZE, false);
            assertThat(shaped.glyphs()).allMatch(glyph -> glyph.id() != 0).hasSize(2 + "[4E2D]".length());
            assertThat(shaped.places().right(1, 2)).isCloseTo(shaped.places().left(2, 3), within(0.01));
        }
    }

    /** Unicode Standard Annex 9: letters from right to left, figures and English in them from left to right. */
    @ParameterizedTest
    @MethodSource("hebrewFromTheLeft")
    void hebrewRunsFromRightToLeftAndAllElseFromLeftToRight(
            String text, boolean rightToLeft, int[] chars, int[][] parts) {
        Needs.that(hasSystemFont("\u05d0"), "no font of this system has Hebrew");
        Extents places = shaper.shape(text, Face.READING, SIZE, rightToLeft).places();
        assertThat(places.mixed()).isTrue();
        for (int i = 1; i < chars.length; i++) {
            assertThat(places.left(chars[i - 1], chars[i - 1] + 1)).isLessThan(places.left(chars[i], chars[i] + 1));
        }
        for (int i = 1; i < parts.length; i++) {
            assertThat(places.right(parts[i - 1][0], parts[i - 1][1]))
                    .isLessThan(places.left(parts[i][0], parts[i][1]));
        }
    }

    /** A text, whether it is set from the right, and its chars and its words (first, one past the last) from the left. */
    static List<Arguments> hebrewFromTheLeft() {
        return List.of(
                Arguments.of(
                        "\u05e9\u05dc\u05d5\u05dd 125 \u05e2\u05d5\u05dc\u05dd",
                        true,
                        new int[] {12, 11, 10, 9, 5, 6, 7, 3, 2, 1, 0},
                        new int[][] {{9, 13}, {5, 8}, {0, 4}}),
                Arguments.of(
                        "say \u05e9\u05dc\u05d5\u05dd now",
                        false,
                        new int[] {0, 1, 2, 7, 6, 5, 4, 9, 10, 11},
                        new int[][] {{0, 3}, {4, 8}, {9, 12}}));
    }

    /** Arabic letters take other shapes where they join (Unicode Standard, chapter 9.2). */
    @Test
    void arabicLettersJoin() {
        Needs.that(hasSystemFont("\u0628"), "no font of this system has Arabic");
        Set<Integer> shapes = new HashSet<>(ids(shaper.shape("\u0628\u0628\u0628", Face.READING, SIZE, true)));
        assertThat(shapes).hasSize(3);
        assertThat(shapes)
                .doesNotContain(
                        ids(shaper.shape("\u0628", Face.READING, SIZE, true)).get(0));
    }

    private boolean hasSystemFont(String letter) {
        return fonts.of(Face.READING, letter).isPresent();
    }

    private Shaper.Shaped shape(String text) {
        return shaper.shape(text, Face.READING, SIZE, false);
    }

    private static List<Integer> ids(Shaper.Shaped shaped) {
        return shaped.glyphs().stream().map(Shaper.Glyph::id).toList();
    }

    private static Set<Typeface> fontsOf(Shaper.Shaped shaped) {
        Set<Typeface> used = new HashSet<>();
        shaped.glyphs().forEach(glyph -> used.add(glyph.font()));
        return used;
    }
}
