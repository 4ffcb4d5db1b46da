package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.junit.jupiter.api.Test;

final class FilmPlaceTest {
    @Test
    void aFilmWithoutItsScriptsFileIsNamedByTheTitleInAnyScript() throws ProblemException {
        assertThat(FilmPlace.name(titled("\u041a\u043e\u043b\u0435\u0441\u043e"), Optional.empty()))
                .isEqualTo("\u043a\u043e\u043b\u0435\u0441\u043e");
        assertThat(FilmPlace.name(titled("\u00dcbung 1"), Optional.empty())).isEqualTo("ubung-1");
    }

    @Test
    void theRootOfADiskIsNoFilmsName() {
        Path root = Path.of("/").toAbsolutePath();
        FilmRequest request = SmallFilm.of(Path.of("lesson.md"), Optional.of(root), false, Set.of(), Optional.empty());
        assertThat(FilmPlace.folder(request, Path.of("session"), Optional.empty()))
                .isEqualTo(Path.of("session", "film"));
    }

    private static Script titled(String title) throws ProblemException {
        return ScriptFile.parse("---\ntitle: " + title + "\n---\nOne line.\n", "lesson.md");
    }
}
