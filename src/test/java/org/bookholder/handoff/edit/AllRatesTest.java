package org.bookholder.handoff.edit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.TimelineEvent;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Both cut lists read back at every rate, by the rules of their forms.
 *
 * <p>CMX 3600: eight fields, out points exclusive, each record in the record out before it, a reel of up to eight
 * characters, channels {@code V}, {@code A} or {@code B} (source and samples of otio-cmx3600-adapter). OpenTimelineIO: field
 * tables of otio-serialized-schema-only-fields.md.
 */
final class AllRatesTest {
    private static List<Timecode> all() {
        List<Timecode> all = new ArrayList<>();
        FrameRate.STANDARD.forEach(rate -> all.add(new Timecode(rate, false)));
        FrameRate.STANDARD.stream().filter(FrameRate::canDrop).forEach(rate -> all.add(new Timecode(rate, true)));
        return all;
    }

    @ParameterizedTest
    @MethodSource("all")
    void theEditDecisionListReadsBack(Timecode timecode) throws Exception {
        HandOff handOff = handOff(timecode);
        List<String> lines = text(new EdlPart(), handOff).lines().toList();
        assertThat(lines.get(0)).startsWith("TITLE: ");
        assertThat(lines.get(1)).isEqualTo("FCM: " + (timecode.drop() ? "DROP FRAME" : "NON-DROP FRAME"));
        List<String[]> events = lines.stream()
                .filter(line -> line.matches("\\d{3} .*"))
                .map(line -> line.split("\\s+", -1))
                .toList();
        assertThat(events).hasSameSizeAs(handOff.timeline().events()).hasSizeGreaterThan(5);
        long now = timecode.frame("01:00:00:00").orElseThrow();
        for (int i = 0; i < events.size(); i++) {
            String[] event = events.get(i);
            assertThat(event).as(Arrays.toString(event)).hasSize(8);
            assertThat(Integer.parseInt(event[0])).isEqualTo(i + 1);
            assertThat(event[1]).matches("[A-Z0-9_]{1,8}");
            assertThat(event[2]).isIn("V", "A", "B");
            assertThat(event[3]).isEqualTo("C");
            long in = frame(timecode, event[4]);
            long out = frame(timecode, event[5]);
            assertThat(frame(timecode, event[6])).isEqualTo(now);
            now = frame(timecode, event[7]);
            assertThat(out - in).isPositive().isEqualTo(now - frame(timecode, event[6]));
            assertSource(handOff.timeline().events().get(i), in, out);
        }
    }

    /** SMPTE ST 12-1: after 23:59:59 and its last frame the labels begin again at zero. */
    @ParameterizedTest
    @MethodSource("all")
    void timecodeGoesOnAfterMidnight(Timecode timecode) throws Exception {
        HandOff handOff = ExampleHandOff.of(
                ExampleSession.state(), ExampleSession.events(), ExampleHandOff.beforeMidnight(timecode), timecode);
        List<String[]> events = text(new EdlPart(), handOff)
                .lines()
                .filter(line -> line.matches("\\d{3} +REC.*"))
                .map(line -> line.split("\\s+", -1))
                .toList();
        assertThat(events).hasSize(2);
        assertThat(events.get(0)[4]).startsWith("23:59:5");
        assertThat(events.get(1)[5]).startsWith("00:00:0");
        long day = timecode.framesPerDay();
        for (int i = 0; i < 2; i++) {
            long length = frame(timecode, events.get(i)[7]) - frame(timecode, events.get(i)[6]);
            long source = frame(timecode, events.get(i)[5]) - frame(timecode, events.get(i)[4]);
            assertThat(Math.floorMod(source, day)).isEqualTo(length).isPositive();
        }
        JsonNode root = new ObjectMapper().readTree(text(new OtioPart(), handOff));
        root.at("/tracks/children/0/children").forEach(item -> assertItem(item, timecode));
    }

    private static void assertSource(TimelineEvent event, long in, long out) {
        event.source().ifPresent(source -> {
            assertThat(in).isEqualTo(source.in());
            assertThat(out).isEqualTo(source.out());
        });
    }

    @ParameterizedTest
    @MethodSource("all")
    void theTimelineReadsBack(Timecode timecode) throws Exception {
        HandOff handOff = handOff(timecode);
        JsonNode root = new ObjectMapper().readTree(text(new OtioPart(), handOff));
        assertFields(root, "Timeline.1", "global_start_time", "metadata", "name", "tracks");
        assertFields(
                root.path("tracks"),
                "Stack.1",
                "children",
                "effects",
                "enabled",
                "markers",
                "metadata",
                "name",
                "source_range");
        JsonNode track = root.at("/tracks/children/0");
        assertFields(
                track,
                "Track.1",
                "children",
                "effects",
                "enabled",
                "kind",
                "markers",
                "metadata",
                "name",
                "source_range");
        assertThat(track.path("children")).hasSameSizeAs(handOff.timeline().events());
        long frames = 0;
        for (JsonNode item : track.path("children")) {
            assertItem(item, timecode);
            frames += item.at("/source_range/duration/value").asLong();
        }
        assertThat(frames).isEqualTo(handOff.timeline().frames());
    }

    private static void assertItem(JsonNode item, Timecode timecode) {
        boolean clip = item.path("OTIO_SCHEMA").asText().equals("Clip.2");
        if (clip) {
            assertFields(
                    item,
                    "Clip.2",
                    "active_media_reference_key",
                    "effects",
                    "enabled",
                    "markers",
                    "media_references",
                    "metadata",
                    "name",
                    "source_range");
            JsonNode media = item.path("media_references")
                    .path(item.path("active_media_reference_key").asText());
            assertFields(
                    media,
                    "ExternalReference.1",
                    "available_image_bounds",
                    "available_range",
                    "metadata",
                    "name",
                    "target_url");
            assertWithin(item.path("source_range"), media.path("available_range"));
        } else {
            assertFields(item, "Gap.1", "effects", "enabled", "markers", "metadata", "name", "source_range");
        }
        assertFields(item.path("source_range"), "TimeRange.1", "duration", "start_time");
        assertFields(item.at("/source_range/duration"), "RationalTime.1", "rate", "value");
        assertThat(item.at("/source_range/duration/rate").asDouble())
                .isEqualTo(timecode.rate().perSecond());
        for (JsonNode marker : item.path("markers")) {
            assertFields(marker, "Marker.2", "color", "comment", "marked_range", "metadata", "name", "range");
            assertThat(marker.path("color").asText()).isIn("RED", "CYAN");
            assertWithin(marker.path("marked_range"), item.path("source_range"));
        }
    }

    private static void assertWithin(JsonNode range, JsonNode whole) {
        long start = range.at("/start_time/value").asLong();
        long first = whole.at("/start_time/value").asLong();
        assertThat(start).isGreaterThanOrEqualTo(first);
        assertThat(start + range.at("/duration/value").asLong())
                .isLessThanOrEqualTo(first + whole.at("/duration/value").asLong());
    }

    private static void assertFields(JsonNode node, String schema, String... fields) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        assertThat(node.path("OTIO_SCHEMA").asText()).isEqualTo(schema);
        names.remove("OTIO_SCHEMA");
        assertThat(Set.copyOf(names)).isEqualTo(Set.of(fields));
    }

    private static long frame(Timecode timecode, String label) {
        return timecode.frame(label).orElseThrow(() -> new AssertionError("no such frame: " + label));
    }

    private static HandOff handOff(Timecode timecode) {
        return ExampleHandOff.of(ExampleSession.state(), ExampleSession.events(), ExampleHandOff.footage(), timecode);
    }

    private static String text(HandOffPart part, HandOff handOff) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        part.files(handOff).get(0).content().write(out);
        return out.toString(StandardCharsets.UTF_8);
    }
}
