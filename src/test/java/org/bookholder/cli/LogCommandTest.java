package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.bookholder.footage.Channels;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Footage that was filmed without the program: real files and the real recogniser. */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
@Execution(ExecutionMode.CONCURRENT)
final class LogCommandTest {
    private static final Path MODEL = Path.of(System.getProperty("bookholder.home"), "models/vosk-model-en-us");

    /** Where the first file ends and the second begins in the demo's reading, in seconds. */
    private static final double SECOND = 34.9;

    /** When the reading began by the timecode of each, in seconds. */
    private static final double FIRST_BEGINS = 9 * 3600;

    private static final double SECOND_BEGINS = 9 * 3600 + 600 - SECOND;

    /** What the cut keeps before and after the voice is part of it. */
    private static final double NEAR = 0.12;

    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void find() {
        Needs.program("ffmpeg", "Debian's ffmpeg");
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        program = new Program(folder);
        program.equipment.hearsForReal();
    }

    /** By {@code demo-scripts/lesson-1.reading.json} lines 1 to 7 are read in the first file, 9 to 12 in the second. */
    @Test
    void footageBecomesASessionAndAHandOffThatPointsIntoIt() throws IOException, InterruptedException {
        Path first = first();
        Path second = second();
        Path session = folder.resolve("session");

        int status = program.run(
                "log",
                Films.DEMO.resolve("lesson-1.md").toString(),
                first.toString(),
                second.toString(),
                "--session",
                session.toString(),
                "--model",
                MODEL.toString());

        assertThat(status).as(program.err()).isZero();
        assertThat(program.out())
                .contains(
                        "Following Kamera \"A\" 1.mp4",
                        "take 1: picture: Kamera \"A\" 1.mp4, the only one that shows it",
                        "take 2: sound: \u041a\u0430\u043c\u0435\u0440\u0430 2.mov",
                        "Pickup list: Reading a bent wheel",
                        "19 in all, 11 clean");
        Path out = session.resolve("handoff");
        assertCut(out);
        assertThat(Files.readString(out.resolve("reading-a-bent-wheel.edl")))
                .contains(
                        "* FROM CLIP NAME:  Kamera \"A\" 1.mp4",
                        "* FROM CLIP NAME:  \u041a\u0430\u043c\u0435\u0440\u0430 2.mov");
        assertThat(Files.readString(out.resolve("reading-a-bent-wheel.vtt")))
                .contains("Hello, and welcome to the workshop.", "I bought it for $12 at a yard sale,")
                .doesNotContain("kettle");
        List<CSVRecord> log = table(out.resolve("reading-a-bent-wheel-log.csv"));
        assertThat(log.get(0).get("time of day")).isEqualTo("2026-03-01 08:59:58.000");
        assertThat(log).filteredOn(row -> row.get("kind").equals("aside")).hasSize(1);
        assertThat(table(out.resolve("reading-a-bent-wheel-pickups.csv")).get(0).get("line"))
                .isEqualTo("8");
    }

    /** Hiss in the first and third sound track of the camera, the reading's first lines in the second. */
    @Test
    void theSoundTrackThatWasFollowedIsHandedOff() throws IOException, InterruptedException, ProblemException {
        Path file = folder.resolve("three.mov");
        List<String> inputs = new ArrayList<>(Films.reading(0, 12));
        inputs.addAll(List.of("-f", "lavfi", "-i", "anoisesrc=r=16000:a=0.5:d=12:seed=3"));
        Films.make(
                file,
                inputs,
                "-map",
                "0:v",
                "-map",
                "2:a",
                "-map",
                "1:a",
                "-map",
                "2:a",
                "-c:a",
                "pcm_s16le",
                "-ar",
                "48000");
        Path session = folder.resolve("session");

        int status = program.run(
                "log",
                Films.DEMO.resolve("lesson-1.md").toString(),
                file.toString(),
                "--session",
                session.toString(),
                "--model",
                MODEL.toString());

        assertThat(status).as(program.err()).isZero();
        assertThat(FootageNotes.read(session).get(0).hearings())
                .singleElement()
                .satisfies(hearing -> assertThat(hearing.channels()).isEqualTo(Channels.one(2)));
        assertThat(Files.readString(session.resolve("handoff/reading-a-bent-wheel.edl")))
                .contains("* AUDIO CHANNELS: 2");
    }

    private Path first() throws IOException, InterruptedException {
        return Films.make(
                folder.resolve("Kamera \"A\" 1.mp4"),
                Films.reading(0, SECOND),
                "-c:a",
                "aac",
                "-ar",
                "44100",
                "-ac",
                "2",
                "-timecode",
                "09:00:00:00",
                "-metadata",
                "creation_time=2026-03-01T08:59:58Z");
    }

    private Path second() throws IOException, InterruptedException {
        return Films.make(
                folder.resolve("\u041a\u0430\u043c\u0435\u0440\u0430 2.mov"),
                Films.reading(SECOND, 27.9),
                "-c:a",
                "pcm_s16le",
                "-ar",
                "48000",
                "-timecode",
                "09:10:00:00");
    }

    /** Where the voice begins and ends in the demo's reading, by its truth. */
    private static void assertCut(Path out) throws IOException {
        List<CSVRecord> cut = table(out.resolve("reading-a-bent-wheel-cut.csv"));
        assertThat(row(cut, "8").get("file")).isEmpty();
        assertThat(row(cut, "19").get("file")).isEmpty();
        assertClip(cut, "1-7", FIRST_BEGINS, 0.60, 34.65);
        assertClip(cut, "9", SECOND_BEGINS, 35.15, 40.55);
        assertClip(cut, "10", SECOND_BEGINS, 45.34, 48.34);
        assertClip(cut, "11-12", SECOND_BEGINS, 51.34, 62.57);
        assertThat(row(cut, "9").get("notes")).contains("aside");
    }

    private static void assertClip(List<CSVRecord> cut, String lines, double begins, double from, double to) {
        CSVRecord row = row(cut, lines);
        assertThat(seconds(row, "source in") - begins).as(lines).isCloseTo(from, within(NEAR));
        assertThat(seconds(row, "source out") - begins).as(lines).isCloseTo(to, within(NEAR));
    }

    private static CSVRecord row(List<CSVRecord> cut, String lines) {
        return cut.stream()
                .filter(row -> row.get("lines").equals(lines))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no clip holds lines " + lines));
    }

    private static double seconds(CSVRecord row, String column) {
        long frame =
                new Timecode(FrameRate.FPS_25, false).frame(row.get(column)).orElseThrow();
        return frame / 25.0;
    }

    private static List<CSVRecord> table(Path file) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        String text = Files.readString(file);
        // A table with more than ASCII begins with a mark of its encoding, as spreadsheets want it (common practice).
        String bare = text.startsWith("\ufeff") ? text.substring(1) : text;
        try (CSVParser rows = CSVParser.parse(bare, format)) {
            return rows.getRecords();
        }
    }
}
