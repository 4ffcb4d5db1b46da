package org.bookholder.runtime.record;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** How much of a lesson is left after its script was changed. */
final class MendedScriptTest {
    @Test
    void alikeIsWhatStillHasHalfOfTheLines() {
        assertThat(mended("One hub.", "Two rims.", "Three spokes.", "A new line.")
                        .alike())
                .isTrue();
        assertThat(mended("One hub.", "Two rims.", "A new line.").alike()).isTrue();
        assertThat(mended("One hub.", "A new line.", "And another.").alike()).isFalse();
        assertThat(mended("Nothing of it.").alike()).isFalse();
    }

    @Test
    void theSentenceCountsLines() {
        assertThat(mended("One hub.", "Two rims.", "Three spokes.", "Four tyres.", "Five.")
                        .sentence())
                .isEqualTo("the script was changed since; all its lines keep their notes, and 1 line is new");
        assertThat(mended("One hub.", "Two rims.").sentence())
                .isEqualTo("the script was changed since; 2 of its 4 lines keep their notes, and none is new");
        assertThat(mended("One hub.", "Seven.", "Eight.").sentence())
                .endsWith("1 of its 4 lines keep their notes, and 2 lines are new");
    }

    private static MendedScript mended(String... now) {
        return MendedScript.of(
                Scripts.of("One hub.", "Two rims.", "Three spokes.", "Four tyres."), Scripts.of(now), false);
    }
}
