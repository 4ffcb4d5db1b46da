package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bookholder.cli.Installed;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.JsonSchemas;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Our files, read by programs that we did not write. */
final class OutsideReadersTest {
    private static final String FFMPEG = "Debian's ffmpeg";

    @TempDir
    private Path folder;

    @BeforeEach
    void handOff() throws ProblemException {
        HandOff handOff = ExampleHandOff.filmed();
        List<HandOffFile> files = new ArrayList<>();
        Installed.handOffParts().forEach(part -> files.addAll(part.files(handOff)));
        new HandOffWriter().write(folder, files, false);
    }

    /** FFmpeg's own muxer writes what its demuxer understood: the same captions must come out. */
    @Test
    void ffmpegReadsTheCaptions() throws IOException, InterruptedException {
        Needs.program("ffmpeg", FFMPEG);
        for (String name : List.of("lesson.vtt", "lesson.srt")) {
            String read = run("ffmpeg", "-v", "error", "-i", file(name), "-f", "srt", "-");
            assertThat(read.replace("\r", "")).as(name).isEqualTo("""
                            1
                            00:00:00,095 --> 00:00:02,095
                            Every wheel begins with its hub.

                            2
                            00:00:12,662 --> 00:00:14,648
                            Rest your hands.

                            """);
        }
    }

    @Test
    void ffprobeReadsTheTakesAndTheirNotes() throws IOException, InterruptedException {
        Needs.program("ffprobe", FFMPEG);
        JsonNode take = probe("lesson-take-001.wav");
        assertThat(take.at("/streams/0/codec_name").asText()).isEqualTo("pcm_s16le");
        assertThat(take.at("/format/duration").asDouble()).isEqualTo(18);
        JsonNode tags = take.at("/format/tags");
        assertThat(tags.path("encoded_by").asText()).isEqualTo("Bookholder");
        assertThat(tags.path("date").asText()).isEqualTo("2026-03-02");
        assertThat(tags.path("creation_time").asText()).isEqualTo("09-00-00");
        // Nine hours at 8000 samples a second.
        assertThat(tags.path("time_reference").asLong()).isEqualTo(259_200_000L);
        assertThat(tags.path("comment").asText()).isEqualTo("A lesson, take 1, used: lines 1, 5");
    }

    @Test
    void soxReadsTheListeningCut() throws IOException, InterruptedException {
        Needs.program("soxi", "Debian's sox");
        assertThat(run("soxi", "-r", file("lesson-listen.wav")).strip()).isEqualTo("8000");
        double seconds =
                Double.parseDouble(run("soxi", "-D", file("lesson-listen.wav")).strip());
        assertThat(seconds).isEqualTo(ExampleHandOff.filmed().cut().length().seconds(), within(0.002));
    }

    @Test
    void theJsonKeepsToItsSchema() throws IOException {
        String schema = Files.readString(folder.resolve("pickups.schema.json"));
        ObjectMapper mapper = new ObjectMapper();
        JsonNode json = mapper.readTree(folder.resolve("lesson-pickups.json").toFile());
        assertThat(json.path("pickups")).hasSize(4);
        assertThat(JsonSchemas.violations(schema, json.toString())).isEmpty();
        ((ObjectNode) json.at("/pickups/0")).put("outcome", "fine");
        assertThat(JsonSchemas.violations(schema, json.toString())).isNotEmpty();
    }

    @Test
    void thePageHoldsEveryPickup() throws IOException {
        try (PDDocument page =
                Loader.loadPDF(folder.resolve("lesson-pickups.pdf").toFile())) {
            String text = new PDFTextStripper().getText(page);
            assertThat(text)
                    .contains("A lesson", "4 lines to pick up")
                    .contains("Then lace the first side.", "skipped: not read")
                    .contains("a door slammed");
        }
    }

    private JsonNode probe(String name) throws IOException, InterruptedException {
        return new ObjectMapper()
                .readTree(run("ffprobe", "-v", "error", "-show_format", "-show_streams", "-of", "json", file(name)));
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    private static String run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        return out;
    }
}
