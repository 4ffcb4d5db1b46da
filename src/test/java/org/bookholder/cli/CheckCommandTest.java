package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.bookholder.course.ExportChecks;
import org.bookholder.delivery.CheckJson;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.JsonSchemas;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

@Execution(ExecutionMode.CONCURRENT)
final class CheckCommandTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");
    private static final String PICTURE = "testsrc2=s=320x180:r=25";

    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void begin() {
        program = new Program(folder);
    }

    /**
     * The demo's reading of lines 1 to 7, as somebody edited it: line 4 is there twice, line 5 is cut off in its middle, and
     * line 6 is missing.
     */
    @Test
    void editingMistakesInTheWordsAreFoundWithTheirTimes() throws IOException {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        program.equipment.hearsForReal();
        String text = Files.readString(HOME.resolve("demo-scripts/lesson-1.md"));
        program.file("edited.md", text.substring(0, text.indexOf("A dull one is loose")));
        JsonNode report = checked(
                folder.resolve("edited_v2.mp4"),
                "-i",
                HOME.resolve("demo-scripts/lesson-1.wav").toString(),
                "-f",
                "lavfi",
                "-i",
                PICTURE,
                "-filter_complex",
                "[0]asplit=4[a][b][c][d];[a]atrim=0:18.8,asetpts=PTS-STARTPTS[e];"
                        + "[b]atrim=14.9:18.8,asetpts=PTS-STARTPTS[f];[c]atrim=18.8:22,asetpts=PTS-STARTPTS[g];"
                        + "[d]atrim=29.4:35,asetpts=PTS-STARTPTS[h];[e][f][g][h]concat=n=4:v=0:a=1,aresample=48000[s]",
                "-map",
                "1:v",
                "-map",
                "[s]");

        List<String> words = new ArrayList<>();
        report.get("findings").forEach(finding -> {
            if (finding.get("kind").asText().equals("words")
                    && finding.get("grade").asText().equals("mend")) {
                words.add(finding.get("what").asText());
            }
        });
        assertThat(words).hasSize(3);
        assertThat(words.get(0)).startsWith("line 4 (").contains("is there 2 times");
        assertThat(words.get(1)).startsWith("line 5 (").contains("is broken off after");
        assertThat(words.get(2)).startsWith("line 6 (").contains("is missing");
        assertThat(report.at("/script").asText()).endsWith("edited.md");
        // The doubled line begins 15.2 s into the recording; the missing one would follow the cut at 25.9 s.
        assertThat(start(report, "line 4")).isCloseTo(15.2, within(0.3));
        assertThat(start(report, "line 6")).isBetween(25.0, 26.2);
        isAsTheSchemaSays(report);
        captionsFollowTheEditedFilm();
    }

    /** The captions of a film that was edited elsewhere: in its time, what is there twice twice, without what is missing. */
    private void captionsFollowTheEditedFilm() throws IOException {
        Path captions = folder.resolve("captions");
        String transcript = Files.readString(captions.resolve("edited_v2-transcript.txt"));
        String line4 = "First, watch the gap";
        assertThat(transcript.split(line4, -1)).as(transcript).hasSize(3);
        List<String> cues = Files.readAllLines(captions.resolve("edited_v2.vtt"));
        int first = cues.indexOf(
                cues.stream().filter(row -> row.startsWith(line4)).findFirst().orElseThrow());
        assertThat(cues.get(first - 1)).startsWith("00:00:15.");
        assertThat(captions.resolve("edited_v2.srt")).isRegularFile();
    }

    /** From the demo's reading: line 2 of the three is begun, broken off and begun again. */
    @Test
    void aFluffThatWasLeftInIsFoundWithItsTime() throws IOException {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        program.equipment.hearsForReal();
        String text = Files.readString(HOME.resolve("demo-scripts/lesson-1.md"));
        program.file("fluff.md", text.substring(text.indexOf("Look at the rim"), text.indexOf("Wipe the braking")));
        JsonNode report = checked(
                folder.resolve("fluff.mp4"),
                "-ss",
                "44.9",
                "-t",
                "17.9",
                "-i",
                HOME.resolve("demo-scripts/lesson-1.wav").toString(),
                "-f",
                "lavfi",
                "-i",
                PICTURE);

        assertThat(report.get("findings").findValuesAsText("what"))
                .filteredOn(what -> what.contains("line "))
                .singleElement()
                .asString()
                .startsWith("a false start of line 2 (")
                .endsWith("was left in");
        // It begins 48.74 s into the recording.
        assertThat(start(report, "a false start")).isCloseTo(48.74 - 44.9, within(0.3));
    }

    /** The output for a film of these inputs, in which something must be fixed. */
    private JsonNode checked(Path film, String... inputs) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(inputs));
        arguments.addAll(List.of("-shortest", "-preset", "ultrafast", "-c:a", "aac", "-b:a", "128k"));
        Ffmpeg.make(film, arguments.toArray(String[]::new));
        assertThat(program.run("check", film.toString(), "--captions", "--json", "--model", MODEL.toString()))
                .isEqualTo(3);
        return new ObjectMapper().readTree(program.out()).get(0);
    }

    private static double start(JsonNode report, String beginning) {
        for (JsonNode finding : report.get("findings")) {
            if (finding.get("what").asText().startsWith(beginning)) {
                return finding.get("start").asDouble();
            }
        }
        throw new AssertionError("nothing was found of " + beginning);
    }

    private static void isAsTheSchemaSays(JsonNode report) throws IOException {
        try (InputStream in = Objects.requireNonNull(CheckJson.class.getResourceAsStream("check.schema.json"))) {
            String schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            assertThat(JsonSchemas.violations(schema, report.toString())).isEmpty();
        }
    }

    @Test
    void aFilmThatMeetsACustomProfile() throws IOException {
        Path film = film("fine.mp4");
        String profile = program.file("ours.txt", "height: at least 180\nloudness: at least -40\n");

        assertThat(program.run("check", film.toString(), "--profile", profile)).isZero();

        assertThat(program.out())
                .startsWith("fine.mp4: fine\n")
                .contains(
                        "h264 320x180 at 25, aac 44100 Hz, 1 ch",
                        "words not checked",
                        "where the usual ones are from: bookholder check --show-profile");
        JsonNode kept = new ObjectMapper()
                .readTree(folder.resolve("fine.mp4.check.json").toFile());
        assertThat(kept.at("/verdict").asText()).isEqualTo("fine");
        assertThat(kept.at("/bytes").asLong()).isEqualTo(Files.size(film));
        isAsTheSchemaSays(kept);
    }

    @Test
    void aScriptThatCannotBeReadCostsOnlyTheWords() throws IOException {
        Path film = film("lesson.mp4");
        program.file("lesson.md", "");
        String profile = program.file("ours.txt", "height: at least 180\nloudness: at least -40\n");

        assertThat(program.run("check", film.toString(), "--profile", profile)).isZero();
        assertThat(program.out())
                .contains("h264 320x180 at 25", "the words were not checked; ", "lesson.md:1: the script is empty");

        String named = folder.resolve("lesson.md").toString();
        assertThat(program.run("check", film.toString(), "--profile", profile, "--script", named))
                .isEqualTo(2);
        assertThat(program.err()).contains("lesson.md:1: the script is empty");
    }

    @Test
    void aFilmInACourseIsCheckedByItsProfileAndShownOnItsBoard() throws ProblemException, IOException {
        program.file("course.yaml", "title: Wheels\ndelivery: site.txt\n");
        program.file("site.txt", "height: at least 360\n");
        program.file("lesson-1.md", "One.\n");
        Files.createDirectories(folder.resolve("exports"));
        Path film = film("exports/lesson-1.mp4");

        assertThat(program.run("check", film.toString(), "--no-words")).isEqualTo(3);

        assertThat(ExportChecks.read(folder, film).orElseThrow().findings())
                .containsExactly("the picture is 320 by 180 pixels; allowed is at least 360");
        program = new Program(folder);
        program.file("site.txt", "height: at least 180\n");
        assertThat(program.run("check", film.toString(), "--no-words")).isZero();
        assertThat(ExportChecks.read(folder, film).orElseThrow().passed()).isTrue();
    }

    @Test
    void aFilmInAFolderOfScriptsIsShownOnItsBoard() throws IOException {
        program.file("lesson-1.md", "One.\n");
        Files.createDirectories(folder.resolve("exports"));
        Path film = film("exports/lesson-1.mp4");

        assertThat(program.run("check", film.toString(), "--no-words")).isEqualTo(3);

        assertThat(program.run("course", folder.toString(), "--json")).isZero();
        JsonNode board = new ObjectMapper().readTree(program.out());
        assertThat(board.at("/lessons/0/findings").toString())
                .contains("the picture is 320 by 180 pixels; allowed is at least 1080");
    }

    @Test
    void aFilmWithoutSoundOrWithoutPicture() {
        Path mute = Ffmpeg.make(folder.resolve("mute.mp4"), "-f", "lavfi", "-i", PICTURE + ":d=2");
        Path blind = Ffmpeg.make(folder.resolve("blind.mp4"), "-f", "lavfi", "-i", "sine=d=2", "-c:a", "aac");
        program.file("mute.md", "One.\n");

        assertThat(program.run("check", mute.toString(), blind.toString())).isEqualTo(3);

        assertThat(program.err()).isEmpty();
        assertThat(program.out().lines())
                .containsSequence(
                        "  mend             audio        it has no sound",
                        "                                 export it with the sound switched on")
                .containsSequence(
                        "  mend             video        it has no picture",
                        "                                 export it with the picture switched on");
    }

    @Test
    void oneOfTwoCannotBeReadAndTheOtherIsChecked() throws IOException {
        Path film = film("whole.mp4");
        byte[] bytes = Files.readAllBytes(film);
        // An index at the end of the file is lost with its second half.
        Path half = Files.write(folder.resolve("half.mp4"), Arrays.copyOf(bytes, bytes.length / 2));

        assertThat(program.run("check", half.toString(), film.toString())).isEqualTo(2);
        assertThat(program.err())
                .startsWith("bookholder: ")
                .contains("half.mp4")
                .hasLineCount(1);
        assertThat(program.out()).contains("whole.mp4: ");
        assertThat(folder.resolve("half.mp4.check.json")).doesNotExist();
    }

    @Test
    void theProfileCanBeShownEditedAndUsed() {
        assertThat(program.run("check", "--show-profile")).isZero();
        String shown = program.out();
        assertThat(shown).contains("height: at least 1080", "delivery.txt");
        program = new Program(folder);
        String own = program.file("own.txt", shown.replace("at least 1080", "at least 2160"));
        assertThat(program.run("check", "--show-profile", "--profile", own)).isZero();
        assertThat(program.out()).contains("height: at least 2160");
    }

    @Test
    void badInputIsOnePlainLine() {
        refuses("no film was named", "check");
        refuses("there is no such file", "check", program.path("none.mp4"));
        refuses("cannot be read as film or sound", "check", program.file("letter.mp4", "Dear aunt"));
        refuses("bad.txt: sets nothing", "check", "x.mp4", "--profile", program.file("bad.txt", "# container: mp4\n"));
        refuses("the profile cannot be read", "check", "x.mp4", "--profile", program.path("none.txt"));
        refuses("a script is for one film", "check", "a.mp4", "b.mp4", "--script", "a.md");
        refuses("none.md", "check", "a.mp4", "--script", program.path("none.md"));
    }

    @Test
    void aWrongLineOfTheProfileIsNamedAndTheRestIsChecked() {
        String profile = program.file("ours.txt", "container: mp4\ncolour: red\nheight: tall\n");
        assertThat(program.run("check", "--show-profile", "--profile", profile)).isZero();
        assertThat(program.out()).contains("container: mp4 ", "height: at least 1080 ");
        assertThat(program.err())
                .hasLineCount(2)
                .contains(profile + ":2: there is no setting 'colour'; write one of container, ")
                .contains(profile + ":3: 'tall' is not a range for 'height'; ")
                .contains("(this line is left out)");
    }

    private void refuses(String message, String... arguments) {
        assertThat(program.run(arguments)).isEqualTo(2);
        assertThat(program.err()).startsWith("bookholder: ").contains(message).hasLineCount(1);
    }

    private Path film(String name) {
        return Ffmpeg.make(
                folder.resolve(name),
                "-f",
                "lavfi",
                "-i",
                PICTURE + ":d=3",
                "-f",
                "lavfi",
                "-i",
                "sine=d=3",
                "-preset",
                "ultrafast",
                "-pix_fmt",
                "yuv420p",
                "-c:a",
                "aac");
    }
}
