package org.bookholder.course.versions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.Lesson;
import org.bookholder.course.Sessions;
import org.bookholder.course.versions.LessonHistory.Entry;
import org.bookholder.course.versions.LessonHistory.Kind;
import org.bookholder.course.versions.LessonHistory.Moment;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineChanges;
import org.bookholder.session.LineChanges.Change;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What became of a lesson, and what changed from one text to the next. */
final class LessonHistoryTest {
    private static final Instant MONDAY = Instant.parse("2027-03-01T10:00:00Z");
    private static final Instant TUESDAY = Instant.parse("2027-03-02T10:00:00Z");
    private static final Instant FRIDAY = Instant.parse("2027-03-05T10:00:00Z");

    @TempDir
    private Path folder;

    private CourseFolder files;

    @BeforeEach
    void begin() {
        files = new CourseFolder(folder);
    }

    @Test
    void textsRecordingsAndFilmsStandInOrderOfTime() {
        Lesson first = lesson("The hub.\nThe rim.\nThe end.");
        Script firstText = first.script();
        Lesson now = lesson("The hub.\nThe spoke.\nThe end.\nGoodbye.");
        LessonHistory history = LessonHistory.of(
                now,
                FRIDAY,
                List.of(new ReadText(MONDAY, firstText)),
                List.of(Sessions.of(firstText, MONDAY, "cms")),
                List.of(new Moment(TUESDAY, Kind.FILM, "Film hub.mp4")));
        assertThat(history.entries())
                .extracting(Entry::when, Entry::kind, Entry::version, Entry::what)
                .containsExactly(
                        tuple(MONDAY, Kind.TEXT, 1, "Version 1 of the text: 3 lines, 6 words"),
                        tuple(MONDAY, Kind.RECORDING, 1, "1 take, lines 1, 2 read; to pick up: lines 2, 3"),
                        tuple(TUESDAY, Kind.FILM, 1, "Film hub.mp4; the text is version 2 now"),
                        tuple(FRIDAY, Kind.TEXT, 2, "Version 2 of the text: 4 lines, 7 words; 2 lines changed"));
        assertThat(history.entries().get(3).changes())
                .containsExactly(
                        new Change(LineChanges.Kind.CHANGED, 2, "The rim.", "The spoke."),
                        new Change(LineChanges.Kind.ADDED, 4, "", "Goodbye."));
        assertThat(HistoryText.of(history, ZoneOffset.UTC))
                .containsSequence(
                        "2027-03-05 10:00  text       Version 2 of the text: 4 lines, 7 words; 2 lines",
                        "                             changed",
                        "      line 2, changed:",
                        "        - The rim.",
                        "        + The spoke.",
                        "      line 4, new:",
                        "        + Goodbye.");
        assertThat(HistoryJson.of(history).at("/entries/3/changes/0/was").asText())
                .isEqualTo("The rim.");
    }

    @Test
    void theSameTextReadAgainIsNoNewVersionAndAFileThatIsOlderThanItsReadingIsTheLast() {
        Lesson lesson = lesson("The hub.");
        Script other = lesson("The old hub.").script();
        lesson("The hub.");
        LessonHistory history = LessonHistory.of(
                lesson,
                MONDAY.minusSeconds(60),
                List.of(
                        new ReadText(TUESDAY, lesson.script()),
                        new ReadText(MONDAY, other),
                        new ReadText(FRIDAY, lesson.script())),
                List.of(),
                List.of());
        assertThat(history.entries())
                .extracting(Entry::when, Entry::version)
                .containsExactly(tuple(MONDAY, 1), tuple(TUESDAY, 2));
    }

    @Test
    void aLessonThatWasNeverReadHasItsText() {
        assertThat(LessonHistory.of(lesson("The hub."), MONDAY, List.of(), List.of(), List.of())
                        .entries())
                .singleElement()
                .extracting(Entry::what)
                .isEqualTo("Version 1 of the text: 1 line, 2 words");
    }

    @Test
    void aLineThatIsTakenOutHasItsOldNumber() {
        assertThat(LineChanges.between(Scripts.of("One.", "Two.", "Three."), Scripts.of("One.", "Three.")))
                .containsExactly(new Change(LineChanges.Kind.REMOVED, 2, "Two.", ""));
    }

    private Lesson lesson(String text) {
        files.lesson("hub", text);
        return files.read().lessons().get(0);
    }
}
