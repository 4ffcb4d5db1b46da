package org.bookholder.app.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.FilmedReading;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A lesson of which line 4 was misread on one day and picked up on the next, each day filmed by a camera that begins to count its
 * files anew.
 */
final class LessonHandOffTest {
    /** The cameras were switched on so many seconds before the takes. */
    private static final double FIRST = 1.51;

    private static final double SECOND = 0.75;

    private static final Timecode COUNTED = new Timecode(FrameRate.FPS_25, false);

    @TempDir
    private Path folder;

    private Path lesson;
    private Path first;
    private Path second;
    private final Map<String, Path> cameras = new HashMap<>();
    private Environment here;

    @BeforeEach
    void write() throws ProblemException, IOException {
        Path course = Files.createDirectories(folder.resolve("course"));
        lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        first = course.resolve("sessions/first");
        second = course.resolve("sessions/second");
        FilmedReading.write(first, lesson.toString());
        FilmedReading.writePickup(second, lesson.toString());
        Path day1 = Files.createDirectories(course.resolve("sessions/day 1"));
        Path day2 = Files.createDirectories(course.resolve("sessions/day 2"));
        cameras.put("C0001", FilmedReading.camera(day1.resolve("C0001.MP4"), FIRST));
        cameras.put("C0001_2", FilmedReading.camera(day2.resolve("C0001.MP4"), SECOND));
        FilmedReading.match(first, day1.resolve("C0001.MP4"), FIRST, 0);
        FilmedReading.match(second, day2.resolve("C0001.MP4"), SECOND, 0);
        here = StoredExamples.here(folder);
    }

    /** CMX 3600 as references have it: eight fields, out points exclusive, each record in the record out before it. */
    @Test
    void everyEventOfTheListShowsThePictureInWhichItsLineBegins() throws ProblemException, IOException {
        Map<String, FilmReadBack> pictures = new HashMap<>();
        for (Map.Entry<String, Path> camera : cameras.entrySet()) {
            pictures.put(camera.getKey(), FilmReadBack.silent(camera.getValue(), folder));
        }
        Path list = file(handOff(), "noise-to-be-cut.edl");
        List<String[]> events = Files.readAllLines(list).stream()
                .filter(line -> line.matches("\\d{3} .*"))
                .map(line -> line.split("\\s+", -1))
                .toList();
        assertThat(events.stream().map(event -> event[1] + " " + event[2]))
                .containsExactly("C0001 B", "C0001 B", "C0001_2 B", "C0001 B");
        // Where each is said in its take, and how long before it that take's camera began.
        double[][] said = {{1, FIRST}, {8, FIRST}, {8, SECOND}, {14, FIRST}};
        long at = frame("01:00:00:00");
        for (int i = 0; i < events.size(); i++) {
            String[] event = events.get(i);
            long in = frame(event[4]);
            assertThat(frame(event[6])).as("record in").isEqualTo(at);
            at += frame(event[5]) - in;
            assertThat(frame(event[7])).as("record out").isEqualTo(at);
            int shown = Objects.requireNonNull(pictures.get(event[1]))
                    .numbers(in, in + 1, 1)
                    .get(0);
            assertThat((double) shown)
                    .as("the picture of event %d, two frames before its first word (0101)", i + 1)
                    .isCloseTo(25 * (said[i][0] - 0.08 + said[i][1]), within(1.0));
        }
        assertThat(list)
                .content()
                .contains("* LINES: 4\n", "* SOURCE FILE: ../day 1/C0001.MP4\n", "* SOURCE FILE: ../day 2/C0001.MP4\n")
                .doesNotContain("pickup");
    }

    /** Fields as in OpenTimelineIO's documentation of its schemas. */
    @Test
    void theTimelineHasTheClipsOfBothDaysAndEveryTrackFillsIt() throws ProblemException, IOException {
        Path file = file(handOff(), "noise-to-be-cut.otio");
        JsonNode tracks = new ObjectMapper().readTree(file.toFile()).at("/tracks/children");
        Map<String, String> places = new HashMap<>();
        List<Long> lengths = new ArrayList<>();
        for (JsonNode track : tracks) {
            long frames = 0;
            for (JsonNode item : track.path("children")) {
                frames += item.at("/source_range/duration/value").asLong();
                if (track.path("kind").asText().equals("Video")
                        && item.path("OTIO_SCHEMA").asText().equals("Clip.2")) {
                    String url = item.at("/media_references/DEFAULT_MEDIA/target_url")
                            .asText();
                    assertThat(file.toUri().resolve(URI.create(url)))
                            .as("a link from the hand-off's folder")
                            .satisfies(uri -> assertThat(Path.of(uri)).exists());
                    places.put(item.path("name").asText(), url);
                }
            }
            lengths.add(frames);
        }
        assertThat(places)
                .containsEntry("lines 1-2", "../day%201/C0001.MP4")
                .containsEntry("line 4", "../day%202/C0001.MP4")
                .hasSize(4);
        assertThat(lengths).hasSizeGreaterThan(2).containsOnly(lengths.get(0));
    }

    @Test
    void oneLogOnePickupListAndTheCaptionsOfTheJoinedCut() throws ProblemException, IOException {
        HandOffService.Written written = handOff();
        assertThat(written.folder()).isEqualTo(folder.resolve("course/sessions/second-handoff"));
        assertThat(written.summary()).startsWith("4 clips, 0 gaps, ");
        assertThat(written.remarks()).isEmpty();
        assertThat(Files.readAllLines(file(written, "noise-to-be-cut-pickups.csv")))
                .hasSize(1);
        List<String> log = Files.readAllLines(file(written, "noise-to-be-cut-log.csv"));
        assertThat(log.stream().filter(row -> row.contains("take,"))).hasSize(3);
        assertThat(log).anyMatch(row -> row.startsWith("attempt,1,4,5,2026-01-05") && row.contains("misread,no"));
        assertThat(log).anyMatch(row -> row.startsWith("attempt,2,4,1,2026-01-06") && row.contains("clean,yes"));
        assertThat(file(written, "noise-to-be-cut.vtt")).content().contains("Four has a wrong word.");
        assertThat(file(written, "noise-to-be-cut-chapters.txt")).content().contains("The second part");
        assertThat(Files.readAllLines(file(written, "noise-to-be-cut-cut.csv")).stream()
                        .skip(1)
                        .map(row -> String.join(
                                " ", Arrays.asList(row.split(",", -1)).subList(1, 5))))
                .containsExactly(
                        "1-2 1 C0001.MP4 C0001", "3 1 C0001.MP4 C0001", "4 2 C0001.MP4 C0001_2", "5 1 C0001.MP4 C0001");
    }

    @Test
    void whoseFilesAreWhoseIsSaid() throws ProblemException {
        HandOffService.Written written = handOff();
        assertThat(written.notes())
                .contains(
                        "Take 1: take 1 of the session first, of 2026-01-05 09:00",
                        "Take 2: take 1 of the session second, of 2026-01-06 09:00");
        assertThat(file(written, "noise-to-be-cut-sessions.txt"))
                .content()
                .contains(
                        "  C0001: " + cameras.get("C0001") + " (take 1)\n",
                        "  TAKE001: ",
                        "  C0001_2: " + cameras.get("C0001_2") + " (take 2)\n",
                        "  TAKE002: ");
    }

    @Test
    void eachCameraHasItsOwnDaysSoundInStep() throws ProblemException, IOException {
        HandOffService.Written written = handOff();
        assertSound(file(written, "noise-to-be-cut-sync-c0001-takes.wav"), FIRST);
        assertSound(file(written, "noise-to-be-cut-sync-c0001_2-takes.wav"), SECOND);
        assertSound(file(written, "noise-to-be-cut-take-001.wav"), 0);
        assertSound(file(written, "noise-to-be-cut-take-002.wav"), 0);
    }

    /** The takes are every third sample of the reading. */
    private void assertSound(Path file, double before) throws IOException {
        Path raw = folder.resolve("raw.s16");
        Ffmpeg.make(raw, "-i", file.toString(), "-f", "s16le");
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(raw)).order(ByteOrder.LITTLE_ENDIAN);
        short[] heard = new short[bytes.remaining() / 2];
        bytes.asShortBuffer().get(heard);
        short[] truth = FilmedReading.sound(before, 21);
        int wrong = 0;
        for (int i = 0; i < Math.min(heard.length, 18 * 16_000); i++) {
            wrong += Math.abs(heard[i] - truth[3 * i]) > 1 ? 1 : 0;
        }
        assertThat(heard.length).isGreaterThanOrEqualTo(18 * 16_000);
        assertThat(wrong)
                .as("samples of %s that are not those of its day", file.getFileName())
                .isZero();
    }

    /** One file of a camera that ran on from one session to the next. */
    @Test
    void aFileOfTwoSessionsIsOneReel() throws ProblemException, IOException {
        Files.delete(second.resolve("footage.json"));
        FilmedReading.match(second, Objects.requireNonNull(cameras.get("C0001")), FIRST, 0);
        Path list = file(handOff(), "noise-to-be-cut.edl");
        assertThat(Files.readAllLines(list).stream()
                        .filter(line -> line.matches("\\d{3} .*"))
                        .map(line -> line.split("\\s+", -1)[1]))
                .containsExactly("C0001", "C0001", "C0001", "C0001");
    }

    @Test
    void aLineThatIsNewIsAGapAndOneThatIsGoneIsNamed() throws ProblemException, IOException {
        Files.writeString(lesson, FilmedReading.TEXT.replace("One is the first line.", "This is new here today."));
        HandOffService.Written written = handOff();
        assertThat(written.summary()).contains("1 gap (line 1)");
        assertThat(file(written, "noise-to-be-cut.edl")).content().contains("pickup, line 1, skipped: not read");
        assertThat(file(written, "noise-to-be-cut-pickups.csv")).content().contains("This is new here today.");
        assertThat(file(written, "noise-to-be-cut-sessions.txt"))
                .content()
                .contains("because the lesson has another text there now: line 1 of that session");
    }

    private HandOffService.Written handOff() throws ProblemException {
        HandOffRequest usual = HandOffRequest.usual(here.equipment().handOffParts(), false);
        return new HandOffService(here, usual, Interruption.NONE)
                .write(ScriptFile.read(lesson, List.of()).script(), List.of(first, second));
    }

    private static Path file(HandOffService.Written written, String name) {
        Path file = written.folder().resolve(name);
        assertThat(written.files()).contains(file);
        return file;
    }

    private static long frame(String label) {
        return COUNTED.frame(label).orElseThrow();
    }
}
