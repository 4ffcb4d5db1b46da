package org.bookholder.film;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;

final class FilmMakerTest {
    @Test
    void aFilmForWhichThereIsNoRoomIsRefusedWithBothFigures() {
        assertThatThrownBy(() -> FilmMaker.checkRoom(100L << 20, 300L << 20, Path.of("exports")))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("300 MB")
                .hasMessageContaining("100 MB are free");
        assertThatCode(() -> FilmMaker.checkRoom(300L << 20, 300L << 20, Path.of("exports")))
                .doesNotThrowAnyException();
    }
}
