package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ProfileTextTest {
    @Test
    void whatIsShownReadsBack() throws ProblemException {
        Profile usual = ProfileText.usual();
        Profile again = ProfileText.parse(String.join("\n", ProfileText.of(usual)), "delivery.txt");

        assertThat(ProfileText.of(again)).isEqualTo(ProfileText.of(usual));
        assertThat(again.limits()).hasSameSizeAs(Setting.values());
    }

    @Test
    void whatIsLeftOutIsNotChecked() throws ProblemException {
        Profile profile = ProfileText.parse("# ours\nheight: at least 720   # small\n\n", "delivery.txt");

        assertThat(profile.limits()).containsOnlyKeys(Setting.HEIGHT);
        assertThat(profile.range(Setting.HEIGHT)).contains(new Limit.Between(720, Double.POSITIVE_INFINITY));
    }

    @Test
    void rangesHoldTheirEnds() throws ProblemException {
        Limit.Between loudness = ProfileText.parse("loudness: -18 to -14.5", "p")
                .range(Setting.LOUDNESS)
                .orElseThrow();
        assertThat(loudness.allows(-18)).isTrue();
        assertThat(loudness.allows(-14.5)).isTrue();
        assertThat(loudness.allows(-14.4)).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "heigth: at least 1080 | there is no setting 'heigth'",
                "height: 1080 | '1080' is no range for 'height'",
                "height: | 'height' says nothing",
                "loudness: -14 to -18 | the range of 'loudness' is empty",
                "name: [a-z | 'name' is no regular expression",
                "container | 'container' says nothing",
                "container: mkv | 'container' is given twice"
            })
    void mistakesAreNamedByLine(String line, String message) {
        assertThatThrownBy(() -> ProfileText.parse("container: mp4\n" + line + "\n", "delivery.txt"))
                .isInstanceOf(ProblemException.class)
                .hasMessageStartingWith("delivery.txt:2: " + message);
    }

    @Test
    void aProfileThatSetsNothing() {
        assertThatThrownBy(() -> ProfileText.parse("# nothing yet\n", "delivery.txt"))
                .hasMessage("delivery.txt: sets nothing; begin with what bookholder check --show-profile prints");
    }
}
