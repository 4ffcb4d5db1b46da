package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.TakeRecording;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Needs;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Films made by FFmpeg's own program, matched with a session of the demo's reading, and handed off. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
@Execution(ExecutionMode.CONCURRENT)
final class FootageCommandsTest {
    @TempDir
    private Path folder;

    private Program program;
    private Path session;

    @BeforeEach
    void keepASession() throws Exception {
        Needs.program("ffmpeg", "Debian's ffmpeg");
        program = new Program(folder);
        session = folder.resolve("L'\u00e9t\u00e9 \u30ec\u30c3\u30b9\u30f3");
        try (SessionFolder kept = SessionFolder.create(session, new SessionLocks())) {
            String script = "Hello, and welcome to the workshop.\n\nToday we look at one tired wheel.\n";
            List<SessionEvent> events = List.of(
                    new SessionEvent.Opened(s(0), MORNING, "Lesson", "lesson.md", script),
                    new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", ReadingPosition.START),
                    new SessionEvent.TakeEnded(s(60), 1, MORNING.plusSeconds(60), TakeEnd.CUT),
                    new SessionEvent.TakeSettled(
                            s(60),
                            1,
                            List.of(complete(1, 1, 1, 6, 18.93, 24.51), complete(1, 2, 2, 7, 29.61, 34.68)),
                            List.of()));
            for (SessionEvent event : events) {
                kept.journal().append(event);
            }
            record(kept);
        }
    }

    @Test
    void aCameraIsFoundAndTheCutPointsIntoIt() throws IOException, InterruptedException {
        // Started 10 s late, in another room: 44.1 kHz, an echo, a lossy codec.
        Path film = film(
                "C0001 \"\u5370\" 1.mp4",
                Films.reading(10, 45),
                "-af",
                "aecho=0.8:0.7:40:0.4,highpass=f=150",
                "-ar",
                "44100",
                "-ac",
                "2",
                "-c:a",
                "aac",
                "-timecode",
                "10:20:30:00");

        assertThat(program.run("match", session.toString(), film.toString()))
                .as(program.err())
                .isZero();
        assertThat(program.out()).containsPattern("take 1 begins (9\\.99\\d|10\\.00\\d) s before the file, clock");

        assertThat(program.run("handoff", session.toString(), "--only", "edl,cut"))
                .as(program.err())
                .isZero();
        String edl = Files.readString(session.resolve("handoff/lesson.edl"));
        // 18.93 s in the take are 8.93 s in the film, less a tenth before the word: frame 221, which is 10:20:38:21.
        assertThat(edl).containsPattern("001  C00011   B     C        10:20:38:(19|20|21|22) ");
        assertThat(edl).contains("* FROM CLIP NAME:  C0001 \"\u5370\" 1.mp4");
    }

    @Test
    void aTakeContinuesInTheNextFileIfTheCameraSplitIt() throws IOException, InterruptedException {
        Path first = film("A.mp4", Films.reading(0, 31), "-c:a", "aac");
        Path second = film("B.mp4", Films.reading(31, 29), "-c:a", "aac");
        assertThat(program.run("match", session.toString(), first.toString(), second.toString()))
                .as(program.err())
                .isZero();
        assertThat(program.run("handoff", session.toString(), "--only", "edl"))
                .as(program.err())
                .isZero();
        assertThat(Files.readString(session.resolve("handoff/lesson.edl")))
                .containsPattern("002  A        B     C        00:00:29:1\\d 00:00:31:0[01] ")
                .containsPattern("003  B        B     C        00:00:00:00 00:00:03:(19|20|21|22) ");
    }

    @Test
    void unmatchedFilesAreNamedAndTheOthersKept() throws IOException, InterruptedException {
        Path good = film("good.wav", List.of("-ss", "5", "-t", "30", "-i", Films.READING));
        Path other = film("other.wav", List.of("-i", Films.READING), "-af", "areverse");
        Path silent = film("silent.mp4", Films.PICTURE, "-t", "2");
        Path odd = odd(good);
        Path text = Files.writeString(folder.resolve("notes.mp4"), "no film");
        Path missing = folder.resolve("missing.mp4");

        assertThat(program.run(
                        "match",
                        session.toString(),
                        good.toString(),
                        other.toString(),
                        silent.toString(),
                        odd.toString(),
                        text.toString(),
                        missing.toString()))
                .isEqualTo(2);
        assertThat(program.out()).contains("good.wav: take 1 begins ");
        assertThat(program.err().lines())
                .satisfiesExactly(
                        line -> assertThat(line).contains("other.wav: no take of the session can be heard in it; "),
                        line -> assertThat(line).contains("silent.mp4: has no sound; "),
                        line -> assertThat(line).contains("odd.wav: its sound is stored in an unknown way; "),
                        line -> assertThat(line).contains("notes.mp4: cannot be read as film or sound ("),
                        line -> assertThat(line).contains("missing.mp4: there is no such file; "));
    }

    /** A WAV file in an encoding for which there is no decoder. */
    private Path odd(Path wav) throws IOException {
        byte[] bytes = Files.readAllBytes(wav);
        // The format tag stands at byte 20.
        bytes[20] = 0x77;
        bytes[21] = 0x77;
        return Files.write(folder.resolve("odd.wav"), bytes);
    }

    /** A camera that lost its power: the beginning is there and is used. */
    @Test
    void aTruncatedFileIsUsedAsFarAsItGoes() throws IOException, InterruptedException {
        Path whole = film("whole.mp4", Films.reading(0, 60), "-c:a", "aac", "-movflags", "frag_keyframe+empty_moov");
        byte[] bytes = Files.readAllBytes(whole);
        Path half = Files.write(folder.resolve("half.mp4"), Arrays.copyOf(bytes, bytes.length / 2));
        assertThat(program.run("match", session.toString(), half.toString()))
                .as(program.err())
                .isZero();
        // Such a file does not say that its codec begins with 1024 samples of nothing.
        assertThat(program.out()).containsPattern("half.mp4: take 1 begins at 0.06[345] s");

        Path headless = film("headless.mp4", Films.reading(0, 20), "-c:a", "aac");
        byte[] all = Files.readAllBytes(headless);
        Files.write(headless, Arrays.copyOf(all, all.length * 3 / 4));
        assertThat(program.run("match", session.toString(), headless.toString()))
                .isEqualTo(2);
        assertThat(program.err()).contains("headless.mp4: cannot be read as film or sound (");
    }

    @Test
    void aVariableFrameRateIsReported() throws IOException, InterruptedException {
        Path film = film(
                "phone.mp4",
                Films.reading(0, 30),
                "-vf",
                "select='not(eq(mod(n\\,7)\\,3))'",
                "-fps_mode",
                "vfr",
                "-c:a",
                "aac");
        assertThat(program.run("match", session.toString(), film.toString())).isZero();
        assertThat(program.err()).contains("phone.mp4: its frame rate varies");
    }

    private Path film(String name, List<String> inputs, String... options) throws IOException, InterruptedException {
        return Films.make(folder.resolve(name), inputs, options);
    }

    /** The first minute of the demo's reading as the session's take. */
    private static void record(SessionFolder kept) throws Exception {
        try (WavSource source = WavSource.open(Path.of(Films.READING));
                TakeRecording take = kept.record(1, source.rate(), StreamTime.ZERO)) {
            while (take.end().isBefore(s(60))) {
                int unused = source.read().to(new AudioRead.Reader() {
                    @Override
                    public int samples(AudioBlock block) {
                        try {
                            take.append(block);
                        } catch (Exception e) {
                            throw new AssertionError(e);
                        }
                        return 1;
                    }

                    @Override
                    public int ended() {
                        return 0;
                    }

                    @Override
                    public int gone(String reason) {
                        throw new AssertionError(reason);
                    }
                });
            }
        }
    }
}
