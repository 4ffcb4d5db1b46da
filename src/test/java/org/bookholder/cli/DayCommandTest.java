package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class DayCommandTest {
    private static final String TEXT = "Hello, and welcome to the workshop.\n\nToday we look at one tired wheel.\n";
    private static final Duration READ = Duration.ofMinutes(33);

    @TempDir
    private Path folder;

    private Program program;
    private String script;

    @BeforeEach
    void begin() {
        program = new Program(folder);
        program.equipment.hasPresenter(commands -> commands.accept(new TakeCommand.Quit()));
        script = program.file("lesson.md", TEXT);
    }

    @Test
    void aDayWithoutReadingSaysSo() {
        assertThat(program.run("day")).isZero();
        assertThat(program.out())
                .contains("Nothing has been read at a microphone today.", "see a clinician", "Local work rules");
    }

    @Test
    void theNextLessonGoesOnWithTheDaysClocks() throws IOException, ProblemException {
        readBefore("first");
        open("first");
        program.pass(Duration.ofMinutes(2));
        open("second");

        JsonNode day = day();
        assertThat(day.path("sessions").findValuesAsText("folder"))
                .containsExactly(program.path("first"), program.path("second"));
        assertThat(day.path("reading").asLong()).isEqualTo(READ.toSeconds());
        assertThat(day.path("on_camera").asLong()).isEqualTo(READ.toSeconds());
        assertThat(day.path("reading_since_break").asLong()).isEqualTo(READ.toSeconds());
        assertThat(urgency(day, "voice")).isEqualTo("coming");
        assertThat(day.at("/sessions/0/pickups").asInt()).isEqualTo(1);
        assertThat(day.path("cautions")).isNotEmpty();

        assertThat(program.run("day")).isZero();
        assertThat(program.out())
                .contains(
                        "2 sessions, 33 min of reading, 33 min on camera",
                        "Reading for 33 min",
                        "1 line to pick up",
                        "pick it up");
    }

    @Test
    void aLineThatTwoSessionsOfALessonListIsCountedOnce() throws IOException, ProblemException {
        readBefore("first");
        open("first");
        readBefore("second");
        open("second");
        JsonNode day = day();
        assertThat(day.path("pickups").asInt()).isEqualTo(1);
        assertThat(day.at("/sessions/0/pickups").asInt()).isZero();
        assertThat(day.at("/sessions/1/pickups").asInt()).isEqualTo(1);
    }

    /** Older sessions name their script as it was named to the command: nobody knows in which folder. */
    @Test
    void lessonsOfOneNameInTwoFoldersAreTwo() throws IOException, ProblemException {
        String other = "Another lesson begins.\n\nIt has a second line, too.\n";
        readBefore("first", "lesson.md", TEXT);
        open("first");
        script = program.file("other.md", other);
        readBefore("second", "lesson.md", other);
        open("second");
        JsonNode day = day();
        assertThat(day.path("pickups").asInt()).isEqualTo(2);
        assertThat(day.at("/sessions/0/pickups").asInt()).isEqualTo(1);
        assertThat(day.at("/sessions/1/pickups").asInt()).isEqualTo(1);
    }

    @Test
    void aSessionNamesItsScriptSoThatItIsFoundFromAnyFolder() throws ProblemException {
        String absolute = script;
        script = Path.of("").toAbsolutePath().relativize(Path.of(script)).toString();
        open("first");
        try (SessionFolder session = SessionFolder.openForReading(folder.resolve("first"))) {
            assertThat(Replay.firstOpened(session.events()).orElseThrow().source())
                    .isEqualTo(absolute);
        }
    }

    @Test
    void aBreakBetweenLessonsIsShownAndCounts() throws IOException, ProblemException {
        readBefore("first");
        open("first");
        program.pass(Duration.ofMinutes(12));
        open("second");

        JsonNode day = day();
        assertThat(day.path("rests")).hasSize(1);
        assertThat(day.at("/rests/0/length").asLong())
                .isEqualTo(Duration.ofMinutes(12).toSeconds());
        assertThat(day.path("reading_since_break").asLong()).isZero();
        assertThat(urgency(day, "voice")).isEqualTo("none");
        program.run("day");
        assertThat(program.out()).contains("rest of 12 min", "The next break is advised after 35 min more.");
    }

    @Test
    void anotherPresenterHasAnotherDay() throws IOException, ProblemException {
        readBefore("first");
        open("first");
        open("second", "--presenter", "Guest");

        assertThat(day().path("sessions")).hasSize(1);
        JsonNode guest = day("--presenter", "guest");
        assertThat(guest.path("sessions").findValuesAsText("folder")).containsExactly(program.path("second"));
        assertThat(guest.path("reading").asLong()).isZero();
    }

    @Test
    void aNewDayBeginsAfterFourHours() throws IOException, ProblemException {
        readBefore("first");
        open("first");
        program.pass(Duration.ofHours(4));
        assertThat(day().path("sessions")).isEmpty();
        open("second");
        assertThat(day().path("reading").asLong()).isZero();
    }

    @Test
    void aSessionThatIsGoneIsLeftOut() throws IOException, ProblemException {
        readBefore("first");
        open("first");
        open("second");
        assertThat(folder.resolve("first")
                        .toFile()
                        .renameTo(folder.resolve("moved").toFile()))
                .isTrue();
        assertThat(program.run("day")).isZero();
        assertThat(program.out()).contains("1 session, 33 min of reading");
        assertThat(program.err()).isEmpty();
    }

    /** A session in which was read for a while, up to now. */
    private void readBefore(String name) throws ProblemException {
        readBefore(name, script, TEXT);
    }

    private void readBefore(String name, String source, String text) throws ProblemException {
        Instant began = program.now();
        StreamTime end = StreamTime.ofSeconds((double) READ.toSeconds());
        program.pass(READ);
        try (SessionFolder session = SessionFolder.create(folder.resolve(name), new SessionLocks())) {
            for (SessionEvent event : List.of(
                    new SessionEvent.Opened(StreamTime.ZERO, began, "Lesson", source, text),
                    new SessionEvent.TakeStarted(StreamTime.ZERO, 1, began, "", ReadingPosition.START),
                    new SessionEvent.PositionMoved(StreamTime.ZERO, new ReadingPosition(1, 2), Mover.VOICE, 1),
                    new SessionEvent.PickupMarked(end, 2, "once more, with the wheel in the picture"),
                    new SessionEvent.TakeEnded(end, 1, program.now(), TakeEnd.CUT),
                    new SessionEvent.TakeSettled(end, 1, List.of(), List.of()))) {
                session.journal().append(event);
            }
        }
    }

    /** Opens the reading window for a session, begins a take and closes it at once. */
    private void open(String name, String... options) {
        FakeAudioSource quiet = new FakeAudioSource(Program.RATE);
        for (int i = 0; i < 100_000; i++) {
            quiet.then(new AudioRead.NothingYet());
        }
        program.equipment.hasMicrophone(quiet);
        String[] arguments = new String[5 + options.length];
        System.arraycopy(
                new String[] {"read", script, "--no-desk", "--session", program.path(name)}, 0, arguments, 0, 5);
        System.arraycopy(options, 0, arguments, 5, options.length);
        assertThat(program.run(arguments)).as(program.err()).isZero();
    }

    private JsonNode day(String... options) throws IOException {
        String[] arguments = new String[2 + options.length];
        arguments[0] = "day";
        arguments[1] = "--json";
        System.arraycopy(options, 0, arguments, 2, options.length);
        assertThat(program.run(arguments)).as(program.err()).isZero();
        return new ObjectMapper().readTree(program.out());
    }

    private static String urgency(JsonNode day, String reason) {
        for (JsonNode advice : day.path("advice")) {
            if (advice.path("reason").asText().equals(reason)) {
                return advice.path("urgency").asText();
            }
        }
        return "missing";
    }
}
