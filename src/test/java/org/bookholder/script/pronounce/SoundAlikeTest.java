package org.bookholder.script.pronounce;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SoundAlikeTest {
    /** Homophones of English; from memory. */
    @ParameterizedTest
    @CsvSource({"flour,flower", "write,right", "their,there", "see,sea", "knight,night", "through,threw", "one,won"})
    void homophonesLieClose(String a, String b) {
        assertThat(SoundAlike.distance(a, b)).isLessThan(0.45);
    }

    @ParameterizedTest
    @CsvSource({"sixty,fifty", "hammer,wheel", "spoke,needle", "quickly,paper", "fourteen,morning"})
    void wordsThatSoundDifferentLieApart(String a, String b) {
        assertThat(SoundAlike.distance(a, b)).isGreaterThan(0.45);
    }

    @Test
    void aWordHasNoDistanceFromItself() {
        assertThat(SoundAlike.distance("nipple", "nipple")).isZero();
        assertThat(SoundAlike.distance("", "")).isZero();
    }

    @Test
    void spacesMakeNoSound() {
        assertThat(SoundAlike.distance("some thing", "something")).isLessThan(0.3);
    }
}
