package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.Spoken;
import org.bookholder.view.settings.Cue;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
final class ReadCommandTest {
    private static final String SCRIPT = """
        # A wheel

        Every wheel begins with its hub.
        Count the spokes twice.
        Then lace the first side.
        """;
    private static final Spoken VOICE = new Spoken(0.5)
            .says("every wheel begins with its hub")
            .says("then lace the first side")
            .pauses(0.5);

    @TempDir
    private Path folder;

    private Program program;
    private String script;
    private String session;

    @BeforeEach
    void writeScript() {
        program = new Program(folder);
        program.equipment.hears(new FakeEars(VOICE.hypotheses()));
        script = program.file("wheel.md", SCRIPT);
        session = program.path("session");
    }

    @Test
    void readsARecordingAndListsThePickups() {
        assertThat(readRecording()).isZero();
        assertThat(program.err()).isEmpty();
        assertThat(program.out())
                .containsPattern("1 +clean +Every wheel")
                .contains("Pickup list: A wheel")
                .containsPattern("2 +skipped +Count the spokes twice.")
                .contains("3 in all, 2 clean, 1 skipped");
    }

    @Test
    void showsTheSameListAgainFromTheSession() {
        readRecording();
        String first = program.out();
        assertThat(program.run("notes", session)).isZero();
        assertThat(first).contains(program.out());
        assertThat(program.out()).startsWith("Pickup list: A wheel");
    }

    @Test
    void givesItsNotesAsJson() {
        readRecording();
        assertThat(program.run("notes", session, "--json")).isZero();
        assertThat(program.out())
                .startsWith("{")
                .contains("\"outcome\" : \"skipped\"")
                .contains("\"best\" : null");
    }

    @Test
    void givesATraceOfThePosition() {
        readRecording();
        assertThat(program.run("notes", session, "--trace")).isZero();
        assertThat(program.out().lines().toList()).first().isEqualTo("{\"at\":0.000,\"line\":1,\"word\":1}");
        assertThat(program.out()).contains("\"line\":3,");
    }

    @Test
    void continuesASessionInANewTake() {
        readRecording();
        program.equipment.hears(new FakeEars(List.of()));
        assertThat(readRecording()).isZero();
        program.run("notes", session, "--json");
        assertThat(program.out()).contains("\"take\" : 2");
        program.run("sessions", folder.toString());
        assertThat(program.out()).contains("finished").contains("2 takes").contains("A wheel");
    }

    @Test
    void picksUpInTheLessonsOwnSessionUnlessNothingIsOpen() {
        String recording = program.recording("wheel.wav", VOICE.seconds());
        String[] read = {"read", script, "--audio", recording, "--no-window", "--unpaced"};
        String[] pickUp = {"read", script, "--audio", recording, "--no-window", "--unpaced", "--pickups"};
        assertThat(program.run(pickUp)).isEqualTo(2);
        assertThat(program.err())
                .isEqualTo("bookholder: " + script + ": no line of it is to be picked up; read it without --pickups\n");
        assertThat(program.run("read", script, program.file("other.md", "Another one."), "--no-window", "--pickups"))
                .isEqualTo(2);
        assertThat(program.err())
                .isEqualTo(
                        "bookholder: --pickups: no line of these lessons is to be picked up; read them without it\n");
        program.equipment.hears(new FakeEars(VOICE.hypotheses()));
        assertThat(program.run(read)).isZero();
        program.equipment.hears(new FakeEars(
                new Spoken(0.5).says("count the spokes twice").pauses(0.5).hypotheses()));
        assertThat(program.run(pickUp)).as(program.err()).isZero();
        assertThat(program.out()).contains("goes on in a new take");
        assertThat(program.out().lines().filter(line -> line.matches(" +\\d+  [a-z].*")))
                .as("only what was read now")
                .allMatch(line -> line.contains("clean") && line.contains("ount the spokes twice"))
                .isNotEmpty();
        program.run("sessions");
        assertThat(program.out()).contains("2 takes").containsOnlyOnce("A wheel");
        assertThat(program.run("notes", script, "--json")).isZero();
        assertThat(program.err()).startsWith("The lesson's latest session: ").contains("2026-03-02-0900-a-wheel");
        assertThat(program.out()).startsWith("{").contains("\"take\" : 2").doesNotContain("skipped");
        assertThat(program.run(pickUp)).isEqualTo(2);
        assertThat(program.err()).contains("no line of it is to be picked up");
    }

    @Test
    void aNewSessionBesideOneThatWasBrokenOffSaysSo() throws ProblemException, IOException {
        Path broken = Files.createDirectories(folder.resolve("data/sessions")).resolve("2026-03-02-0800-a-wheel");
        try (SessionFolder open = SessionFolder.create(broken, new SessionLocks())) {
            open.journal().append(new SessionEvent.Opened(s(0), MORNING, "A wheel", script, SCRIPT));
            open.journal()
                    .append(new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", ReadingPosition.START));
        }
        String recording = program.recording("wheel.wav", VOICE.seconds());
        assertThat(program.run("read", script, "--audio", recording, "--no-window", "--unpaced"))
                .isZero();
        assertThat(program.err())
                .contains("this is a new session; " + broken + " of this lesson was broken off and stays as it is;")
                .contains("name it with --session");
        assertThat(readRecording()).as("a place that was named").isZero();
        assertThat(program.err()).doesNotContain("broken off");
    }

    @Test
    void keepsASessionInTheUsersDataUnlessAPlaceIsNamed() {
        String recording = program.recording("wheel.wav", 1);
        assertThat(program.run("read", script, "--audio", recording, "--no-window", "--unpaced"))
                .isZero();
        assertThat(program.out()).contains(program.path("data/sessions/2026-03-02-0900-a-wheel"));
        program.run("sessions");
        assertThat(program.out()).contains("2026-03-02 09:00").contains("A wheel");
    }

    @Test
    void readsFromAMicrophoneUntilEnterIsPressed() {
        program.equipment.hasMicrophone(quiet());
        program.types("\n");
        assertThat(program.run("read", script, "--no-window", "--session", session))
                .isZero();
        assertThat(program.out())
                .contains("Pickup list: A wheel")
                .containsPattern("(?m)^The disk has room for .* of recording\\.$");
    }

    @Test
    void readsInTheTerminalAndSaysWhyWhenThereIsNoDisplay() {
        program.equipment.hasMicrophone(quiet());
        program.types("\n");
        assertThat(program.run("read", script, "--session", session)).isZero();
        assertThat(program.err())
                .isEqualTo(
                        "bookholder: reading in the terminal, without a window: reading window: there is no display; "
                                + "read with --no-window\n");
        assertThat(program.out()).contains("Pickup list");
    }

    @Test
    void readsInAWindowUntilItIsClosed() {
        program.equipment.hasMicrophone(quiet());
        program.equipment.hasPresenter(
                commands -> commands.accept(new NoteCommand.Add(new Remark.Noted(2, "a door", true))));
        assertThat(program.run("read", script, "--session", session, "--mirror", "--words", "4", "--monitor", "2"))
                .isZero();
        assertThat(program.equipment.wish()).hasValueSatisfying(wish -> {
            assertThat(wish.settings().mirrored()).isTrue();
            assertThat(wish.settings().columnWords()).isEqualTo(4);
            assertThat(wish.place().fullScreen()).isTrue();
            assertThat(wish.place().monitor()).isEqualTo(2);
        });
        assertThat(program.equipment.windowsClosed()).isEqualTo(1);
        assertThat(program.out()).contains("marked: a door");
    }

    @Test
    void opensTheWindowAsThePresenterWantsIt() {
        program.equipment.hasMicrophone(quiet());
        program.equipment.hasPresenter(commands -> commands.accept(new TakeCommand.Quit()));
        assertThat(program.run(
                        "read",
                        script,
                        "--session",
                        session,
                        "--count-in",
                        "3",
                        "--eye-line",
                        "20",
                        "--hide",
                        "pace,time"))
                .isZero();
        assertThat(program.equipment.wish()).hasValueSatisfying(wish -> {
            assertThat(wish.settings().countIn()).isEqualTo(3);
            assertThat(wish.settings().eyeLine()).isEqualTo(0.2);
            assertThat(wish.settings().cues())
                    .containsExactlyInAnyOrder(Cue.PICKUPS, Cue.BREAK, Cue.SOUND, Cue.FOOTLIGHTS);
        });
    }

    @Test
    void readsByHandWithoutAMicrophone() {
        program.equipment.hasPresenter(commands -> commands.accept(new TakeCommand.Quit()));
        assertThat(program.run("read", script, "--session", session, "--no-microphone", "--move", "hand"))
                .isZero();
        assertThat(program.err()).isEmpty();
        assertThat(program.equipment.wish())
                .hasValueSatisfying(wish -> assertThat(wish.settings().way()).isEqualTo(Mover.HAND));
    }

    @Test
    void movesSteadilyAndSaysSoIfThereIsNoMicrophone() {
        program.equipment.hasPresenter(commands -> commands.accept(new TakeCommand.Quit()));
        assertThat(program.run("read", script, "--session", session, "--move", "steady"))
                .isZero();
        assertThat(program.err()).contains("there is no microphone").hasLineCount(1);
    }

    @Test
    void movesSteadilyAndSaysSoIfTheMicrophoneCannotBeOpened() {
        program.equipment.hasDeadMicrophone("front panel");
        program.equipment.hasPresenter(commands -> commands.accept(new TakeCommand.Quit()));
        assertThat(program.run("read", script, "--session", session, "--move", "steady"))
                .isZero();
        assertThat(program.err())
                .contains("no microphone can be opened; the reading is neither followed nor recorded")
                .hasLineCount(1);
    }

    @Test
    void reopensAWindowThatFails() {
        AtomicInteger opened = new AtomicInteger();
        program.equipment.hasMicrophone(quiet());
        program.equipment.hasPresenter(commands -> {
            if (opened.incrementAndGet() == 1) {
                throw new IllegalStateException("a planted fault of the window");
            }
            commands.accept(new TakeCommand.Quit());
        });
        assertThat(program.run("read", script, "--session", session)).isZero();
        assertThat(opened).hasValue(2);
        assertThat(program.equipment.windowsClosed()).isEqualTo(2);
        assertThat(program.err())
                .containsOnlyOnce("the window failed and was opened again; the reading goes on")
                .contains("fault.log says more");
        assertThat(folder.resolve("session/fault.log")).content().contains("'window'", "a planted fault of the window");
    }

    @Test
    void anErrorOnTheMainThreadClosesTheTakeAndEndsWithALine() {
        program.equipment.hasMicrophone(quiet());
        program.equipment.hasPresenter(commands -> {
            throw new LinkageError("a planted error");
        });
        assertThat(program.run("read", script, "--session", session)).isEqualTo(1);
        assertThat(program.err()).contains("fault.log").doesNotContain("\tat ");
        assertThat(folder.resolve("session/fault.log")).content().contains("'main thread'", "a planted error");
        assertThat(program.run("notes", session)).isZero();
        assertThat(program.err()).doesNotContain("broken off");
    }

    @Test
    void continuesInTheTerminalIfTheWindowKeepsFailing() {
        AtomicInteger opened = new AtomicInteger();
        program.equipment.hasMicrophone(quiet());
        program.equipment.hasPresenter(commands -> {
            if (opened.incrementAndGet() == 3) {
                commands.accept(new TakeCommand.Quit());
            }
            throw new IllegalStateException("a planted fault of the window");
        });
        assertThat(program.run("read", script, "--session", session)).isZero();
        assertThat(opened).hasValue(3);
        assertThat(program.err())
                .containsOnlyOnce("The window has failed; the reading goes on without it. Press Enter to end it.");
        assertThat(folder.resolve("session/fault.log")).content().contains("'window': failed, is done without");
    }

    @Test
    void continuesInTheTerminalIfTheWindowCannotBeOpenedAgain() {
        program.equipment.hasMicrophone(quiet());
        program.equipment.opensOneWindow();
        program.equipment.hasPresenter(commands -> {
            commands.accept(new TakeCommand.Quit());
            throw new IllegalStateException("a planted fault of the window");
        });
        assertThat(program.run("read", script, "--session", session)).isZero();
        assertThat(program.err())
                .containsOnlyOnce("The window has failed; the reading goes on without it. Press Enter to end it.");
        assertThat(folder.resolve("session/fault.log"))
                .content()
                .contains("'window': failed, is done without", "a planted fault of the opening");
    }

    @Test
    void endsInOrderAndKeepsTheTraceOfAFault() {
        FakeAudioSource broken = quiet();
        broken.close();
        program.equipment.hasMicrophone(broken);
        assertThat(program.run("read", script, "--no-window", "--session", session))
                .isEqualTo(1);
        assertThat(program.err()).contains("a fault of the program").hasLineCount(1);
        assertThat(folder.resolve("session/fault.log"))
                .content()
                .contains("'capture'")
                .contains("source is closed");
        program.run("sessions", folder.toString());
        assertThat(program.out()).contains("finished");
    }

    private int readRecording() {
        String recording = program.recording("wheel.wav", VOICE.seconds());
        return program.read(script, recording, session);
    }

    /** A microphone in a quiet room. */
    private static FakeAudioSource quiet() {
        FakeAudioSource source = new FakeAudioSource(Program.RATE);
        for (int i = 0; i < 100_000; i++) {
            source.then(new AudioRead.NothingYet());
        }
        return source;
    }
}
