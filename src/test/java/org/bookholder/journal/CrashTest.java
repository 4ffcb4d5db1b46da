package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Audio;
import org.bookholder.testing.ChildJvm;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Kills a process that writes a session, over and over. The promise is that nothing older than a second is lost; what
 * is checked is more, that nothing is lost once its writing was reported.
 */
@Execution(ExecutionMode.CONCURRENT)
final class CrashTest {
    private static final SessionLocks LOCKS = new SessionLocks();

    @TempDir
    private Path parent;

    @Test
    void losesNothingThatWasWrittenBeforeAKill()
            throws ProblemException, IOException, InterruptedException, UnsupportedAudioFileException {
        Path folder = parent.resolve("session");
        Random random = new Random(20260301);
        int safeEvents = 0;
        for (int round = 0; round < 5; round++) {
            // The first round is killed while the session is being created, the others in mid-take.
            int lines = round == 0 ? 1 : 2 + random.nextInt(300);
            Written written = killAfter(lines, folder);
            safeEvents = Math.max(safeEvents, written.events());
            if (written.samples() > 0) {
                assertThat(SessionFolder.list(parent, LOCKS)).hasSize(1);
                assertNothingIsLost(folder, written);
            }
        }
        assertThat(safeEvents)
                .as("all rounds went on where the one before was killed")
                .isGreaterThan(100);
        try (SessionFolder session = SessionFolder.open(folder, LOCKS)) {
            int next = session.journal().events().size();
            session.journal().append(CrashChild.event(next));
            assertThat(session.journal().events()).isEqualTo(events(next + 1));
        }
    }

    @Test
    void theFolderIsUnlockedHoweverTheProcessEnds() throws ProblemException, IOException, InterruptedException {
        SessionFolder.create(parent, LOCKS).close();
        try (ChildJvm child = ChildJvm.start(CrashChild.class, "hold", parent.toString())) {
            assertThat(child.readLine()).startsWith("holding");
            assertThatExceptionOfType(ProblemException.class)
                    .isThrownBy(() -> SessionFolder.open(parent, LOCKS))
                    .satisfies(e -> assertThat(e.what()).isEqualTo("the session is open in another process"));
            SessionFolder.openForReading(parent).close();
            assertThat(child.end()).isZero();
            SessionFolder.open(parent, LOCKS).close();
        }
        try (ChildJvm child = ChildJvm.start(CrashChild.class, "hold", parent.toString())) {
            assertThat(child.readLine()).startsWith("holding");
            child.kill();
            SessionFolder.open(parent, LOCKS).close();
        }
    }

    /**
     * The system's limit on the size of a process's files (RLIMIT_FSIZE of POSIX) stands for a disk that takes no more; a real
     * one needs the super-user. What Windows can limit for a process stands in JOBOBJECT_BASIC_LIMIT_INFORMATION and
     * JOBOBJECT_EXTENDED_LIMIT_INFORMATION (Microsoft, Windows API, winnt.h).
     */
    @Test
    @DisabledOnOs(
            value = OS.WINDOWS,
            disabledReason = "Windows limits a process's time, memory and children, not the size of its files")
    void keepsEverythingWrittenBeforeTheDiskWasFull()
            throws ProblemException, IOException, InterruptedException, UnsupportedAudioFileException {
        Path folder = parent.resolve("full");
        String audio;
        String events;
        try (ChildJvm child = ChildJvm.startWithFileLimit(6_144, CrashChild.class, "fill", folder.toString())) {
            audio = Objects.requireNonNull(child.readLine());
            events = Objects.requireNonNull(child.readLine());
            assertThat(child.end()).isZero();
        }
        assertThat(audio).matches("audio \\d+ .*take-001.wav: cannot be written \\(File too large\\); .*");
        assertThat(events).matches("events \\d+ .*journal.db: (the disk is full|cannot be read or written).*");
        int samples = Integer.parseInt(audio.split(" ", -1)[1]);
        try (SessionFolder session = SessionFolder.open(folder, LOCKS)) {
            assertThat(session.journal().events())
                    .hasSizeGreaterThanOrEqualTo(Integer.parseInt(events.split(" ", -1)[1]));
            assertThat(session.journal().events()).hasSizeGreaterThan(200);
            session.journal().append(CrashChild.event(0));
        }
        assertAudio(folder.resolve("take-001.wav"), Math.max(samples, 190 * CrashChild.RATE));
    }

    private static Written killAfter(int lines, Path folder) throws IOException, InterruptedException {
        try (ChildJvm child = ChildJvm.start(CrashChild.class, "write", folder.toString())) {
            String last = "";
            for (int i = 0; i < lines; i++) {
                last = Objects.requireNonNull(child.readLine(), "the child ended by itself");
            }
            List<String> rest = child.kill();
            // The very last line may have been cut off by the kill.
            for (String line : rest.subList(0, Math.max(0, rest.size() - 1))) {
                last = line;
            }
            String[] words = last.split(" ", -1);
            return words[0].equals("safe")
                    ? new Written(Integer.parseInt(words[1]), Integer.parseInt(words[2]))
                    : new Written(0, 0);
        }
    }

    private static void assertNothingIsLost(Path folder, Written written)
            throws ProblemException, IOException, UnsupportedAudioFileException {
        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            List<SessionEvent> events = session.journal().events();
            assertThat(events).hasSizeGreaterThanOrEqualTo(written.events()).isEqualTo(events(events.size()));
            try (TakeAudio audio = session.audio(1, StreamTime.ZERO).orElseThrow()) {
                assertThat(audio.end().samples(CrashChild.RATE)).isGreaterThanOrEqualTo(written.samples());
            }
        }
        SessionFolder.open(folder, LOCKS).close();
        assertAudio(folder.resolve("take-001.wav"), written.samples());
    }

    /** Reads the repaired file with the JDK's own reader. */
    private static void assertAudio(Path file, int atLeast) throws IOException, UnsupportedAudioFileException {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
            assertThat(in.getFrameLength()).isGreaterThanOrEqualTo(atLeast);
            byte[] bytes = in.readAllBytes();
            for (int i = 0; i < atLeast; i++) {
                int sample = (bytes[2 * i] & 0xFF) | (bytes[2 * i + 1] << 8);
                assertThat(sample).isEqualTo(Audio.sample(i));
            }
        }
    }

    private static List<SessionEvent> events(int count) {
        return IntStream.range(0, count).mapToObj(CrashChild::event).toList();
    }

    /** What the child last said was safe. */
    private record Written(int events, int samples) {}
}
