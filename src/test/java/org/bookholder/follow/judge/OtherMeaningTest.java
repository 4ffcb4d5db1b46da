package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.bookholder.script.normalize.NumberWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which words are taken for others of their kind (from memory). */
final class OtherMeaningTest {
    @ParameterizedTest
    @CsvSource({
        "forty, fifty, true",
        "thirteen, thirty, true",
        "brown, green, true",
        "Monday, sunday, true",
        "left, right, true",
        "inside, outside, true",
        "twenty four, twenty five, true",
        "twenty four, forty two, true",
        // Not the same kind, not the same count of words, or the same word.
        "four, for, false",
        "forty, left, false",
        "twenty four, twenty, false",
        "four, four, false",
        "increase, increased, false",
        "wheel, window, false",
        "four wheels, five heels, false",
        "four wheels, five wheels, true",
    })
    void aWordOfTheSameKindMeansSomethingElse(String written, String said, boolean other) {
        assertThat(OtherMeaning.heardFor(List.of(Arrays.asList(written.split(" "))), said))
                .isEqualTo(other);
    }

    @Test
    void anotherFormOfTheSameNumberIsTheSame() {
        List<List<String>> forms = new NumberWords().cardinal(1500).all();
        assertThat(OtherMeaning.heardFor(forms, "fifteen hundred")).isFalse();
        assertThat(OtherMeaning.heardFor(forms, "one thousand five hundred")).isFalse();
        assertThat(OtherMeaning.heardFor(forms, "sixteen hundred")).isTrue();
    }
}
