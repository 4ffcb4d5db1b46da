package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Stream;
import org.bookholder.session.FilmChoices.Framing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PunchInTest {
    /** Plain arithmetic: as many pixels of the source for the delivered picture as it has itself. */
    @ParameterizedTest
    @CsvSource({
        "3840, 2160, 1920, 1080, 200", "1920, 1080, 1920, 1080, 100", "4096, 2160, 1920, 1080, 200",
        "2704, 1520, 1920, 1080, 140", "1280, 720, 1920, 1080, 100", "3840, 1600, 1920, 1080, 148",
        "1920, 2160, 1920, 1080, 100", "1, 1, 1, 1, 100"
    })
    void aSourceAllowsAsMuchAsItHasPixelsToSpare(int width, int height, int toWidth, int toHeight, int most) {
        assertThat(PunchIn.most(width, height, toWidth, toHeight)).isEqualTo(most);
    }

    @Test
    void alternatesWhereTwoPiecesOfAShotMeet() {
        assertThat(new PunchIn(115, 200).plan(pieces(false, true, true, true, false, true)))
                .containsExactly(100, 115, 100, 115, 100, 115);
    }

    @Test
    void staysWithinWhatTheSourceAllows() {
        assertThat(new PunchIn(130, 110).plan(pieces(false, true))).containsExactly(100, 110);
        assertThat(new PunchIn(115, 100).plan(pieces(false, true))).containsExactly(100, 100);
        assertThat(new PunchIn(115, 104).possible()).isFalse();
        assertThat(new PunchIn(115, 107).possible()).isFalse();
        assertThat(new PunchIn(108, 200).plan(pieces(false, true))).containsExactly(100, 108);
        assertThat(new PunchIn(100, 100).plan(pieces(false, true))).containsExactly(100, 100);
    }

    @Test
    void whatSomeoneHasFramedStaysSoAndTheRestAlternatesFromThere() {
        assertThat(new PunchIn(115, 200)
                        .plan(List.of(
                                new PunchIn.Piece(false, Framing.CLOSER),
                                new PunchIn.Piece(true, Framing.PLANNED),
                                new PunchIn.Piece(true, Framing.AS_SHOT),
                                new PunchIn.Piece(true, Framing.PLANNED),
                                new PunchIn.Piece(true, Framing.CLOSER))))
                .containsExactly(115, 100, 100, 115, 115);
    }

    private static List<PunchIn.Piece> pieces(Boolean... meets) {
        return Stream.of(meets)
                .map(each -> new PunchIn.Piece(each, Framing.PLANNED))
                .toList();
    }

    @Test
    void theFirstPieceShowsTheFullPicture() {
        assertThat(new PunchIn(115, 200).plan(pieces(true, true))).containsExactly(100, 115);
    }

    @Test
    void refusesAFramingWiderThanThePicture() {
        assertThatThrownBy(() -> new PunchIn(90, 200)).isInstanceOf(IllegalArgumentException.class);
    }
}
