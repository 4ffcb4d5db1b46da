package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Ctrl-C in the middle of a command, given to another process. No half-written file may remain. */
@Timeout(180)
@Execution(ExecutionMode.CONCURRENT)
final class InterruptTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");

    /** So long that the work cannot finish before the signal; the file is sparse. */
    private static final int LONG = 4 * 3600;

    private static final int RATE = 16_000;

    @TempDir
    private Path folder;

    private Path temporary;
    private Path session;

    @BeforeEach
    void begin() throws IOException {
        Needs.that(
                new ProcessBuilder("env", "--default-signal=INT", "true")
                                .start()
                                .onExit()
                                .join()
                                .exitValue()
                        == 0,
                "env cannot give a process its usual signals (Debian package coreutils)");
        temporary = Files.createDirectories(folder.resolve("tmp"));
        session = folder.resolve("session");
    }

    @Test
    void anInterruptedHandOffWritesNothing() throws IOException, InterruptedException, ProblemException {
        keepALongSession();
        Path out = Files.createDirectories(folder.resolve("out"));
        List<String> rest;
        try (ChildJvm child = start("handoff", session.toString(), "--out", out.toString())) {
            waitFor(child, () -> isBeingWritten(out, "lesson-take-001.wav"));
            rest = child.interrupt();
        }
        assertThat(rest)
                .containsExactly(
                        "bookholder: interrupted; no file of the hand-off was written or changed", "exit status 130");
        assertThat(out).isEmptyDirectory();
        theJournalIsWhole();
    }

    @Test
    void anInterruptedMatchSavesNothing() throws IOException, InterruptedException, ProblemException {
        keepALongSession();
        Path film = Wav.write(folder.resolve("film.wav"), RATE, Wav.sine(300, 0.1, RATE, 5));
        List<String> rest;
        try (ChildJvm child = start("match", session.toString(), film.toString())) {
            waitFor(child, this::aTrackIsStored);
            rest = child.interrupt();
        }
        assertThat(rest)
                .containsExactly("bookholder: interrupted; what was matched so far is not kept", "exit status 130");
        assertThat(temporary.toFile().list((where, name) -> name.startsWith("bookholder")))
                .isEmpty();
        assertThat(session.resolve("footage.json")).doesNotExist();
        theJournalIsWhole();
    }

    @Test
    void anInterruptedLogKeepsTheFilesFollowed() throws IOException, InterruptedException {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        List<String> rest;
        try (ChildJvm child = start(
                "log",
                HOME.resolve("demo-scripts/lesson-1.md").toString(),
                HOME.resolve("demo-scripts/lesson-1.wav").toString(),
                "--session",
                session.toString(),
                "--model",
                MODEL.toString())) {
            child.readTo("clean");
            rest = child.interrupt();
        }
        assertThat(rest)
                .contains(
                        "What was followed so far can be handed off: bookholder handoff " + session, "exit status 130");
        assertThat(session.resolve("handoff")).doesNotExist();
        theJournalIsWhole();
        Program program = new Program(folder);
        assertThat(program.run("sessions", folder.toString())).isZero();
        assertThat(program.out()).contains("finished");
        assertThat(program.run("handoff", session.toString(), "--only", "edl")).isZero();
        assertThat(Files.readString(session.resolve("handoff/reading-a-bent-wheel.edl")))
                .contains("* FROM CLIP NAME:  lesson-1.wav");
    }

    @Test
    void anInterruptedCheckLeavesNoResult() throws IOException, InterruptedException {
        Needs.program("ffmpeg", "Debian's ffmpeg");
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Path film = Films.make(folder.resolve("lesson-1.mp4"), Films.reading(0, 90), "-c:a", "aac");
        List<String> rest;
        try (ChildJvm child = start(
                "check",
                film.toString(),
                "--script",
                HOME.resolve("demo-scripts/lesson-1.md").toString(),
                "--model",
                MODEL.toString())) {
            waitFor(child, () -> takes() > 0);
            rest = child.interrupt();
        }
        assertThat(rest)
                .containsExactly(
                        "bookholder: interrupted; the film that was being checked has no new result",
                        "exit status 130");
        assertThat(folder.resolve("lesson-1.mp4.check.json")).doesNotExist();
        assertThat(files(folder, ".part")).isZero();
        assertThat(temporary.toFile().list((where, name) -> name.startsWith("bookholder")))
                .isEmpty();
    }

    private ChildJvm start(String... arguments) throws IOException {
        return ChildJvm.startInFront(temporary, Main.class, arguments);
    }

    /** Waits until the work has reached this point. */
    private static void waitFor(ChildJvm child, BooleanSupplier come) throws InterruptedException {
        while (!come.getAsBoolean()) {
            assertThat(child.endsWithin(5)).as("it ended before").isFalse();
        }
    }

    /** Whether a film's sound lies in the run's own folder for temporary files. */
    private boolean aTrackIsStored() {
        File[] runs = temporary.toFile().listFiles((where, name) -> name.startsWith("bookholder-run"));
        return runs != null && Arrays.stream(runs).anyMatch(run -> files(run.toPath(), "sound") > 0);
    }

    private static int files(Path place, String ending) {
        String[] found = place.toFile().list((where, name) -> name.endsWith(ending));
        return found == null ? 0 : found.length;
    }

    /** The takes of the session that a check keeps while it runs. */
    private long takes() {
        File[] sessions = temporary.toFile().listFiles((where, name) -> name.startsWith("bookholder"));
        long takes = 0;
        for (File each : sessions == null ? new File[0] : sessions) {
            takes += files(each.toPath().resolve("session"), ".wav");
        }
        return takes;
    }

    private void theJournalIsWhole() {
        Program program = new Program(folder);
        assertThat(program.run("notes", session.toString(), "--json"))
                .as(program.err())
                .isZero();
    }

    /** A file is written under another name beside it, and then takes its own. */
    private static boolean isBeingWritten(Path folder, String name) {
        String[] there = folder.toFile().list((in, other) -> other.startsWith("." + name));
        return there != null && there.length > 0;
    }

    private void keepALongSession() throws IOException, ProblemException {
        try (SessionFolder kept = SessionFolder.create(session, new SessionLocks())) {
            for (SessionEvent event : List.of(
                    new SessionEvent.Opened(s(0), MORNING, "Lesson", "lesson.md", "Hello, and welcome.\n"),
                    new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", ReadingPosition.START),
                    new SessionEvent.TakeEnded(s(LONG), 1, MORNING.plusSeconds(LONG), TakeEnd.CUT),
                    new SessionEvent.TakeSettled(s(LONG), 1, List.of(complete(1, 1, 1, 3, 1, 2.5)), List.of()))) {
                kept.journal().append(event);
            }
        }
        Path take = Wav.write(session.resolve("take-001.wav"), RATE, new short[0]);
        long bytes = 2L * LONG * RATE;
        try (RandomAccessFile file = new RandomAccessFile(take.toFile(), "rw")) {
            long header = file.length();
            file.setLength(header + bytes);
            // RIFF keeps the sizes of the file and of its last chunk, little-endian, at 4 and before the samples.
            file.seek(4);
            file.writeInt(Integer.reverseBytes((int) (header + bytes - 8)));
            file.seek(header - 4);
            file.writeInt(Integer.reverseBytes((int) bytes));
        }
    }
}
