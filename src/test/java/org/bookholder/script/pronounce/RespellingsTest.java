package org.bookholder.script.pronounce;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spellings of one sound that readers of a word may have in mind, all of them and no others. */
final class RespellingsTest {
    @Test
    void soundsDoubledLettersAndASilentEndAreEachChangedOnce() {
        assertThat(Respellings.of("see"))
                .as("z for s, ea for ee, u is not there, one e less, two s, a silent e less")
                .containsExactlyInAnyOrder("zee", "sea", "se", "ssee");
        assertThat(Respellings.of("wad")).containsExactlyInAnyOrder("vad", "wadd", "wade");
    }

    @Test
    void eachPlaceIsChangedByItself() {
        assertThat(Respellings.of("coco")).contains("koco", "coko").doesNotContain("koko");
        assertThat(Respellings.of("zebu")).contains("sebu", "zeboo");
    }

    @ParameterizedTest
    @CsvSource({
        "phil, fil", "sofa, sopha", "black, blak", "kit, cit", "cat, kat", "gym, gim", "organise, organize",
        "colour, color", "metre, meter", "smith, smit", "saab, sab", "schmidt, shmidt", "schmidt, schmit", "max, macks"
    })
    void aWordMayBeSpeltAsItSounds(String word, String other) {
        assertThat(Respellings.of(word)).contains(other);
    }

    @Test
    void aDoubledLetterIsMadeOneAndASingleOneTwo() {
        assertThat(Respellings.of("anna")).contains("ana", "annae");
        assertThat(Respellings.of("ana")).contains("anna");
        assertThat(Respellings.of("ob")).contains("obb");
        assertThat(Respellings.of("ah")).as("h is not doubled").doesNotContain("ahh");
    }

    @Test
    void aSilentEndComesAndGoes() {
        assertThat(Respellings.of("ann")).contains("anne");
        assertThat(Respellings.of("anne")).contains("ann");
    }

    @Test
    void marksHyphensAndApostrophesMayBeMissing() {
        assertThat(Respellings.of("café")).contains("cafe");
        assertThat(Respellings.of("o'hara")).contains("ohara");
        assertThat(Respellings.of("tom's")).contains("toms");
        assertThat(Respellings.of("co-op")).contains("coop");
    }

    @Test
    void theWordItselfAndNothingAreNoSpellings() {
        assertThat(Respellings.of("e")).isEmpty();
        assertThat(Respellings.of("wheel")).doesNotContain("wheel", "");
        assertThat(Respellings.of("-")).doesNotContain("-", "");
    }
}
