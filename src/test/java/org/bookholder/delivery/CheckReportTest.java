package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.sound.LoudnessReading;
import org.bookholder.testing.JsonSchemas;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** A report as text, and as JSON by its published schema. */
final class CheckReportTest {
    private static final Finding BLACK = Finding.at(
            StreamTime.ofSeconds(3_725.3),
            StreamTime.ofSeconds(3_727),
            Grade.MEND,
            "black",
            "the picture is black",
            "cut it out");
    private static final Finding STILL = Finding.at(
            StreamTime.ofSeconds(5), StreamTime.ofSeconds(9), Grade.LOOK, "frozen", "the picture is still", "look");
    private static final Finding SIZE =
            Finding.ofAll(Grade.MEND, "size-mb", "the file is too large", "export it again");

    @Test
    void theVerdictIsThatOfTheGravestFinding() {
        assertThat(report().gravest()).isEmpty();
        assertThat(report(STILL).gravest()).contains(Grade.LOOK);
        assertThat(report(STILL, BLACK, STILL).gravest()).contains(Grade.MEND);
        assertThat(report(STILL, BLACK, STILL).count(Grade.LOOK)).isEqualTo(2);
    }

    @Test
    void theVerdictForPeopleCountsWhatIsToBeDone() {
        assertThat(CheckText.verdict(report())).isEqualTo("fine");
        assertThat(CheckText.verdict(report(STILL))).isEqualTo("1 to look at");
        assertThat(CheckText.verdict(report(BLACK, SIZE))).isEqualTo("2 to mend");
        assertThat(CheckText.verdict(report(BLACK, STILL, STILL))).isEqualTo("1 to mend, 2 to look at");
    }

    @Test
    void theTextHasEachFindingWithItsTimeAndWhatToDo() {
        assertThat(CheckText.of(report(SIZE, BLACK, STILL)))
                .containsExactly(
                        "lesson-1.mp4: 2 to mend, 1 to look at",
                        "  mp4, 1:02:10.0, 12.3 MB, h264 1920x1080 at 25, aac 48000 Hz, 2 ch",
                        "  loudness -16.0 LUFS, range 5.3 LU, true peak -1.5 dBTP (ITU-R BS.1770, EBU R 128)",
                        "  flashing light looked for (WCAG 2.2, 2.3.1), but not stripes; this is a check, not a"
                                + " certificate",
                        "  words checked against lesson-1.md",
                        "  sound compared with the takes of 2 sessions: 0:58:00.5 of the 0:59:10.0 in which lines are"
                                + " read",
                        "  limits from the profile: usual; where the usual ones are from: bookholder check"
                                + " --show-profile",
                        "  mend             size-mb      the file is too large",
                        "                                 export it again",
                        "  mend  1:02:05.3  black        the picture is black",
                        "                                 cut it out",
                        "  look  0:00:05.0  frozen       the picture is still",
                        "                                 look");
        assertThat(CheckText.toMend(report(SIZE, BLACK, STILL)))
                .containsExactly("the file is too large", "1:02:05.3  the picture is black");
    }

    @Test
    void theReportSaysWhatWasNotChecked() {
        CheckReport silent = new CheckReport(
                film(Optional.empty(), Optional.empty()),
                Instant.EPOCH,
                Instant.EPOCH,
                "usual",
                Optional.empty(),
                Optional.empty(),
                Optional.of(new LoudnessReading(Double.NEGATIVE_INFINITY, 0, 0, 0, -120)),
                List.of());
        assertThat(CheckText.facts(silent))
                .containsExactly("mp4, 1:02:10.0, 12.3 MB", "words not checked: no script was read");
    }

    @Test
    void soundThatIsComparedWithNoTakeIsSaidToBeSo() {
        assertThat(ComparedSound.NOT_COMPARED.fact())
                .isEqualTo("sound not compared with a take: no session of this lesson was found");
        assertThat(new ComparedSound(1, StreamTime.ofSeconds(61), StreamTime.ofSeconds(75)).fact())
                .isEqualTo("sound compared with the takes of one session: 0:01:01.0 of the 0:01:15.0 in which lines"
                        + " are read");
    }

    @Test
    void theJsonIsAsItsSchemaSays() throws IOException {
        String schema;
        try (InputStream in = Objects.requireNonNull(CheckJson.class.getResourceAsStream("check.schema.json"))) {
            schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        String json = CheckJson.of(report(SIZE, BLACK, STILL));
        assertThat(JsonSchemas.violations(schema, json)).isEmpty();
        JsonNode read = new ObjectMapper().readTree(json);
        assertThat(read.path("file").asText()).isEqualTo("lesson-1.mp4");
        assertThat(read.path("verdict").asText()).isEqualTo("mend");
        assertThat(read.path("checked").asText()).isEqualTo("2026-03-02T09:00:00Z");
        assertThat(read.at("/film/length").asDouble()).isEqualTo(3730);
        assertThat(read.at("/film/picture/height").asInt()).isEqualTo(1080);
        assertThat(read.at("/film/sound/rate").asInt()).isEqualTo(48_000);
        assertThat(read.at("/loudness/true_peak").asDouble()).isEqualTo(-1.5);
        assertThat(read.at("/compared/sessions").asInt()).isEqualTo(2);
        assertThat(read.at("/compared/shared").asDouble()).isEqualTo(3480.5);
        assertThat(read.at("/findings/0/start").isNull()).isTrue();
        assertThat(read.at("/findings/1/start").asDouble()).isEqualTo(3725.3);
        assertThat(read.at("/findings/1/end").asDouble()).isEqualTo(3727);
        assertThat(read.at("/findings/1/grade").asText()).isEqualTo("mend");
        assertThat(read.at("/findings/2/grade").asText()).isEqualTo("look");
        assertThat(new ObjectMapper().readTree(CheckJson.of(List.of(report(), report(STILL)))))
                .extracting(node -> node.path("verdict").asText())
                .containsExactly("fine", "look");
    }

    @Test
    void onlyTheFirstThirtyOfAKindAreListedAndTheRestIsCounted() {
        Findings findings = new Findings();
        for (int i = 40; i > 0; i--) {
            findings.add(Finding.at(
                    StreamTime.ofSeconds(i), StreamTime.ofSeconds(i), Grade.MEND, "click", "a click", "cut it out"));
        }
        findings.add(SIZE);
        List<Finding> all = findings.all();
        assertThat(all).hasSize(32);
        assertThat(all.get(0)).as("about the whole film").isEqualTo(SIZE);
        assertThat(all.get(1).place().orElseThrow().start().seconds()).isEqualTo(11);
        assertThat(all.get(30).place().orElseThrow().start().seconds()).isEqualTo(40);
        assertThat(all.get(31).what()).isEqualTo("10 more of this kind");
        assertThat(all.get(31).grade()).isEqualTo(Grade.LOOK);
    }

    private static CheckReport report(Finding... findings) {
        return new CheckReport(
                film(
                        Optional.of(new Film.Picture(
                                "h264", "yuv420p", 1920, 1080, 16 / 9.0, false, FrameRate.FPS_25, false, 8_000_000)),
                        Optional.of(new Film.Sound("aac", 48_000, 2, 192_000, List.of(1.0, 1.0)))),
                Instant.parse("2026-03-01T10:00:00Z"),
                Instant.parse("2026-03-02T09:00:00Z"),
                "usual",
                Optional.of("lesson-1.md"),
                Optional.of(new ComparedSound(2, StreamTime.ofSeconds(3480.5), StreamTime.ofSeconds(3550))),
                Optional.of(new LoudnessReading(-16, 5.3, -12, -13, -1.5)),
                Arrays.asList(findings));
    }

    private static Film film(Optional<Film.Picture> picture, Optional<Film.Sound> sound) {
        return new Film(Path.of("/films/lesson-1.mp4"), 12_345_678, "mp4", StreamTime.ofSeconds(3730), picture, sound);
    }
}
