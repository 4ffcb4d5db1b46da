package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.film.FilmedReading;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChange;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which draft the page shows, and what is kept of those before it. */
final class FilmDraftsTest {
    @TempDir
    private Path folder;

    private Path lesson;
    private Path session;
    private Environment here;

    @BeforeEach
    void write() throws ProblemException, IOException {
        Path course = Files.createDirectories(folder.resolve("course"));
        lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        session = course.resolve("sessions/first");
        FilmedReading.write(session, lesson.toString());
        here = StoredExamples.here(folder);
    }

    @Test
    void aDraftTakesThePlaceOfTheOneBeforeIt() throws ProblemException {
        Path first = draft(lesson).made().file();
        FilmResult second = draft(lesson);
        assertThat(first).doesNotExist();
        assertThat(second.made().file()).exists();
        String name = String.valueOf(second.made().file().getFileName()).replace(".mp4", "");
        assertThat(session.resolve("film/draft-of-lesson").toFile().list())
                .containsExactlyInAnyOrder(name + ".mp4", name + ".srt", name + ".txt", name + ".vtt", "draft.json");
        assertThat(shown(lesson).path("address").asText()).isEqualTo("/s/film/draft-of-lesson/" + name + ".mp4");
    }

    @Test
    void aDraftStaysWhereTheSessionIsNamedFromTheWorkingFolderOn() throws ProblemException {
        Path relative = Path.of("").toAbsolutePath().relativize(session);
        draft(relative);
        Path second = draft(relative).made().file();
        assertThat(second).exists();
        String name = String.valueOf(second.getFileName()).replace(".mp4", "");
        assertThat(session.resolve("film/draft-of-session").toFile().list())
                .containsExactlyInAnyOrder(name + ".mp4", name + ".srt", name + ".txt", name + ".vtt", "draft.json");
    }

    @Test
    void aDraftIsFreshUntilSomethingIsDecidedAndAgainWhenThatIsTakenBack() throws ProblemException {
        assertThat(shown(lesson).isMissingNode()).isTrue();
        draft(lesson);
        assertThat(shown(lesson).path("fresh").asBoolean()).isTrue();
        remark(new Remark.Filmed(2, new FilmChange.Paused(100)));
        assertThat(shown(lesson).path("fresh").asBoolean())
                .as("made before the last change")
                .isFalse();
        remark(new Remark.Retracted(1));
        assertThat(shown(lesson).path("fresh").asBoolean()).isTrue();
    }

    @Test
    void aDraftIsOldWhenItsScriptWasChanged() throws ProblemException, IOException {
        draft(lesson);
        Files.writeString(lesson, FilmedReading.TEXT.replace("The second part", "Part two"));
        assertThat(shown(lesson).path("fresh").asBoolean(true)).isFalse();
    }

    @Test
    void aLessonsDraftAndThatOfOneOfItsSessionsAreKeptApart() throws ProblemException {
        draft(lesson);
        assertThat(shown(session).isMissingNode()).isTrue();
        draft(session);
        assertThat(shown(session).path("address").asText()).contains("draft-of-session");
        assertThat(shown(lesson).path("address").asText()).contains("draft-of-lesson");
    }

    @Test
    void whatIsLeftWithoutItsNoteIsNoDraftAndGoesWithTheNext() throws ProblemException, IOException {
        Path shelf = session.resolve("film/draft-of-lesson");
        Path left = Files.createDirectories(shelf).resolve("lesson-1-draft.mp4");
        Files.writeString(left, "a film whose note a kill prevented");
        assertThat(shown(lesson).isMissingNode()).isTrue();
        assertThat(draft(lesson).made().file()).isEqualTo(shelf.resolve("lesson-1-draft-2.mp4"));
        assertThat(left).doesNotExist();
    }

    private FilmResult draft(Path place) throws ProblemException {
        return new FilmService(here, request(place), progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }

    private JsonNode shown(Path place) throws ProblemException {
        return FilmBoardJson.of(FilmBoard.of(here, request(place)), folder -> "/s/")
                .path("draft");
    }

    private static FilmRequest request(Path place) {
        return SmallFilm.of(place, Optional.empty(), true, Set.of(), Optional.empty());
    }

    private void remark(Remark remark) throws ProblemException {
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            open.journal()
                    .append(new SessionEvent.Remarked(
                            StreamTime.ofSeconds(18), new Remark.Signed(FilmDecisions.AUTHOR, remark)));
        }
    }
}
