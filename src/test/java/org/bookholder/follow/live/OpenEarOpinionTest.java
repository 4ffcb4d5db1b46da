package org.bookholder.follow.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class OpenEarOpinionTest {
    private final OpenEarOpinion echo = new OpenEarOpinion();

    @Test
    void agreesFullyWhereTheSameWordsWereHeard() {
        echo.settle(List.of("now", "lace"), List.of(), at(1));
        echo.partial(List.of("the", "second", "side"), at(2));
        assertThat(echo.agreement(List.of("lace", "the", "second", "side"))).isEqualTo(1);
    }

    @Test
    void agreesByLettersSoThatShortWordsCountForLittle() {
        echo.partial(List.of("the", "rain", "of"), at(1));
        assertThat(echo.agreement(List.of("the", "nipples", "of"))).isEqualTo(5.0 / 12);
    }

    @Test
    void agreesOnlyInTheSameOrder() {
        echo.partial(List.of("side", "lace"), at(1));
        assertThat(echo.agreement(List.of("lace", "side"))).isEqualTo(0.5);
    }

    @Test
    void wordsThatDifferInAFewLettersAgree() {
        echo.partial(List.of("nipple"), at(1));
        assertThat(echo.agreement(List.of("nipples"))).isEqualTo(1);
    }

    @Test
    void forgetsWordsHeardLongAgo() {
        echo.settle(List.of("lace", "and", "so", "it", "went", "on", "for", "ever"), List.of(), at(1));
        assertThat(echo.agreement(List.of("lace"))).isZero();
    }

    @Test
    void countsAsInTimeUnlessItIsFarBehind() {
        echo.partial(List.of("lace"), at(1));
        assertThat(echo.inTime(at(1.5))).isTrue();
        assertThat(echo.inTime(at(2))).isFalse();
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
