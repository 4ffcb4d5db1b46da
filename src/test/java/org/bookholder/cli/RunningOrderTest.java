package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Command;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several lessons read one after another in one run of the program. */
final class RunningOrderTest {
    private static final NoteCommand NOTE = new NoteCommand.Add(new Remark.Noted(1, "once more", true));

    @TempDir
    private Path folder;

    private Program program;
    private String first;
    private String second;
    private String third;
    private final Deque<List<Command>> lessons = new ArrayDeque<>();

    @BeforeEach
    void begin() {
        program = new Program(folder);
        first = program.file("one.md", "---\ntitle: One\n---\nThe first line of one.\n\nThe second line of one.\n");
        second = program.file("two.md", "---\ntitle: Two\n---\nThe only line of two.\n");
        third = program.file("three.md", "---\ntitle: Three\n---\nThe only line of three.\n");
        for (int i = 0; i < 4; i++) {
            program.equipment.hasMicrophone(quiet());
        }
        program.equipment.hasPresenter(commands -> lessons.removeFirst().forEach(commands));
        program.equipment.staysToTheEnd();
    }

    @Test
    void theNextLessonOpensInTheSameWindowAsASessionOfItsOwn() throws IOException, ProblemException {
        lessons.add(List.of(NOTE, new TakeCommand.NextLesson()));
        lessons.add(List.of(new TakeCommand.Quit()));
        assertThat(program.run("read", first, second, "--no-desk"))
                .as(program.err())
                .isZero();
        assertThat(program.equipment.lessonsShown()).containsExactly("One", "Two");
        assertThat(program.equipment.windowsClosed()).isEqualTo(1);
        List<Path> sessions = sessions();
        assertThat(sessions).hasSize(2);
        assertThat(titles(sessions)).containsExactly("One", "Two");
        assertThat(remarks(sessions.get(0))).isEqualTo(1);
        assertThat(remarks(sessions.get(1))).isZero();
        assertThat(program.out()).contains("Pickup list: One", "Pickup list: Two");
    }

    @Test
    void endingASessionEndsTheDay() throws IOException {
        lessons.add(List.of(new TakeCommand.Quit()));
        assertThat(program.run("read", first, second, third, "--no-desk")).isZero();
        assertThat(program.equipment.lessonsShown()).containsExactly("One");
        assertThat(sessions()).hasSize(1);
    }

    @Test
    void aRequestToEndAfterOneForTheNextLessonEnds() {
        lessons.add(List.of(new TakeCommand.NextLesson(), new TakeCommand.Quit()));
        assertThat(program.run("read", first, second, "--no-desk")).isZero();
        assertThat(program.equipment.lessonsShown()).containsExactly("One");
    }

    @Test
    void aCoursesFolderStandsForItsLessons() {
        lessons.add(List.of(new TakeCommand.NextLesson()));
        lessons.add(List.of(new TakeCommand.NextLesson()));
        lessons.add(List.of(new TakeCommand.Quit()));
        assertThat(program.run("read", folder.toString(), "--no-desk"))
                .as(program.err())
                .isZero();
        assertThat(program.equipment.lessonsShown()).containsExactly("One", "Three", "Two");
    }

    /** As "Read on" on the page does (0322). */
    @Test
    void aCoursesFolderGoesOnInTheSessionInWhichItsLessonWasLeft() throws IOException, ProblemException {
        for (int run = 0; run < 3; run++) {
            lessons.add(List.of(NOTE, new TakeCommand.Quit()));
        }
        assertThat(program.run("read", folder.toString(), "--no-desk"))
                .as(program.err())
                .isZero();
        assertThat(program.out()).doesNotContain("goes on");
        program.pass(Duration.ofMinutes(5));
        assertThat(program.run("read", folder.toString(), "--no-desk"))
                .as(program.err())
                .isZero();
        assertThat(program.out()).contains("Its last session goes on in a new take");
        assertThat(program.equipment.lessonsShown()).containsExactly("One", "One");
        assertThat(sessions()).hasSize(1);
        assertThat(remarks(sessions().get(0))).isEqualTo(2);
        assertThat(program.run("read", folder.toString(), "--no-desk", "--new-session"))
                .as(program.err())
                .isZero();
        assertThat(sessions()).hasSize(2);
    }

    /** What was begun on another day goes on in a new session, because the light is another one; also if a new one is asked for. */
    @Test
    void aLessonOfAnotherDayBeginsWhereNobodyHasReadAndSaysSo() throws IOException, ProblemException {
        Path lesson = Files.createDirectories(folder.resolve("course")).resolve("lesson.md");
        Files.writeString(lesson, StoredExamples.script("A wheel"));
        StoredExamples.write(
                folder.resolve("data/sessions/2026-03-02-0900-a-wheel"),
                lesson.toString(),
                StoredExamples.script("A wheel"));
        String begins = "A new session begins at line 6, the first that was not reached";
        for (String[] options : new String[][] {{}, {"--new-session"}}) {
            lessons.add(List.of(new TakeCommand.Quit()));
            List<String> words = new ArrayList<>(List.of("read", String.valueOf(lesson.getParent()), "--no-desk"));
            words.addAll(List.of(options));
            assertThat(program.run(words.toArray(String[]::new)))
                    .as(program.err())
                    .isZero();
            assertThat(program.out()).contains(begins);
        }
        lessons.add(List.of(new TakeCommand.Quit()));
        assertThat(program.run("read", String.valueOf(lesson.getParent()), "--no-desk", "--from", "1"))
                .as(program.err())
                .isZero();
        assertThat(program.out()).doesNotContain(begins);
        assertThat(sessions()).hasSize(4);
    }

    @Test
    void aLessonThatCannotBeReadIsToldBeforeTheDayBegins() throws IOException {
        String empty = program.file("empty.md", "");
        assertThat(program.run("read", first, empty, "--no-desk")).isEqualTo(Main.NOT_OUR_FAULT);
        assertThat(program.err()).contains("empty.md");
        assertThat(sessions()).isEmpty();
    }

    /** It holds a copy of its script, and is no course for that. */
    @Test
    void aSessionIsNoCourse() throws IOException, ProblemException {
        Path session = folder.resolve("data/sessions/2026-03-02-0900-a-wheel");
        StoredExamples.write(session, first);
        assertThat(program.run("read", session.toString(), "--no-desk")).isEqualTo(Main.NOT_OUR_FAULT);
        assertThat(program.err()).contains("this is a session, not a lesson", "--session " + session);
        assertThat(sessions()).containsExactly(session);
    }

    @Test
    void aSessionOrARecordingIsOfOneLesson() {
        assertThat(program.run("read", first, second, "--session", program.path("s")))
                .isEqualTo(Main.NOT_OUR_FAULT);
        assertThat(program.err()).contains("each lesson has a session of its own");
        assertThat(program.run("read", first, second, "--audio", "x.wav")).isEqualTo(Main.NOT_OUR_FAULT);
        assertThat(program.err()).contains("a recording is of one lesson");
    }

    /** In the order of the lessons. */
    private List<Path> sessions() throws IOException {
        Path all = folder.resolve("data/sessions");
        if (!Files.isDirectory(all)) {
            return List.of();
        }
        try (Stream<Path> entries = Files.list(all)) {
            return entries.filter(SessionFolder::isSession)
                    .sorted(Comparator.comparing(session -> session.toString().endsWith("two")))
                    .toList();
        }
    }

    private static List<String> titles(List<Path> sessions) throws ProblemException {
        List<String> titles = new ArrayList<>();
        for (Path session : sessions) {
            try (SessionFolder kept = SessionFolder.openForReading(session)) {
                kept.events().stream()
                        .filter(SessionEvent.Opened.class::isInstance)
                        .forEach(event -> titles.add(((SessionEvent.Opened) event).title()));
            }
        }
        return titles;
    }

    private static long remarks(Path session) throws ProblemException {
        try (SessionFolder kept = SessionFolder.openForReading(session)) {
            return kept.events().stream()
                    .filter(SessionEvent.Remarked.class::isInstance)
                    .count();
        }
    }

    private static FakeAudioSource quiet() {
        FakeAudioSource quiet = new FakeAudioSource(Program.RATE);
        for (int i = 0; i < 100_000; i++) {
            quiet.then(new AudioRead.NothingYet());
        }
        return quiet;
    }
}
