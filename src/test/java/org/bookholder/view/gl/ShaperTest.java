package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.testing.Needs;
import org.bookholder.view.Face;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

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

    /** Unicode Standard Annex 9: letters from right to left, figures in them from left to right. */
    @Test
    void hebrewRunsFromRightToLeftAndItsFiguresFromLeftToRight() {
        Needs.that(hasSystemFont("\u05d0"), "no font of this system has Hebrew");
        String text = "\u05e9\u05dc\u05d5\u05dd 125 \u05e2\u05d5\u05dc\u05dd";
        Extents places = shaper.shape(text, Face.READING, SIZE, true).places();
        assertThat(places.mixed()).isTrue();
        for (int i : new int[] {0, 1, 2, 9, 10, 11}) {
            assertThat(places.left(i, i + 1)).isGreaterThan(places.left(i + 1, i + 2));
        }
        assertThat(places.left(5, 6)).isLessThan(places.left(6, 7));
        assertThat(places.left(6, 7)).isLessThan(places.left(7, 8));
        assertThat(places.left(0, 4)).isGreaterThan(places.right(5, 8));
        assertThat(places.right(9, 13)).isLessThan(places.left(5, 8));
    }

    @Test
    void aHebrewWordInEnglishStandsInItsPlace() {
        Needs.that(hasSystemFont("\u05d0"), "no font of this system has Hebrew");
        Extents places = shape("say \u05e9\u05dc\u05d5\u05dd now").places();
        assertThat(places.right(0, 3)).isLessThan(places.left(4, 8));
        assertThat(places.right(4, 8)).isLessThan(places.left(9, 12));
        assertThat(places.left(4, 5)).isGreaterThan(places.left(7, 8));
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
