package org.bookholder.handoff.edit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.junit.jupiter.api.Test;

/** Two cameras and a recorder: each on a track of its own, and each in a list of its own. */
final class EditorTracksTest {
    private static final String FILMED = "C0001 \u00e9t\u00e9.MP4";

    /** Documentation of OpenTimelineIO, "timeline structure": the last track of a stack lies on top. */
    @Test
    void eachSourceHasATrackAndThePreferredCameraLiesOnTop() throws Exception {
        JsonNode tracks = otio(ExampleHandOff.severalSources()).at("/tracks/children");
        List<String> names = new ArrayList<>();
        tracks.forEach(track ->
                names.add(track.path("kind").asText() + " " + track.path("name").asText()));
        assertThat(names)
                .containsExactly(
                        "Video B0001.MP4",
                        "Video " + FILMED,
                        "Audio " + FILMED,
                        "Audio B0001.MP4",
                        "Audio REC01.WAV",
                        "Audio lesson-take-001.wav");
        tracks.forEach(track -> {
            long frames = 0;
            for (JsonNode item : track.path("children")) {
                frames += item.at("/source_range/duration/value").asLong();
            }
            assertThat(frames)
                    .isEqualTo(ExampleHandOff.severalSources().timeline().frames());
        });
    }

    /** The second camera began in the middle of line 1, and stopped in the middle of line 5. */
    @Test
    void aCameraThatRanForPartOfAClipHasThatPart() throws Exception {
        JsonNode side = otio(ExampleHandOff.severalSources()).at("/tracks/children/0/children");
        List<String> items = new ArrayList<>();
        side.forEach(item -> items.add(item.path("OTIO_SCHEMA").asText() + " "
                + item.at("/source_range/start_time/value").asLong() + "+"
                + item.at("/source_range/duration/value").asLong()));
        // The clip of line 1 begins at 0.905 s and has 65 frames; the camera began at 2 s, 33 frames later. 11:00:00;00
        // is
        // frame 1186812.
        assertThat(items).startsWith("Gap.1 0+33", "Clip.2 1186812+32").contains("Gap.1 0+15");
    }

    @Test
    void onlyTheBestSoundIsEnabledAtEachMoment() throws Exception {
        JsonNode tracks = otio(ExampleHandOff.severalSources()).at("/tracks/children");
        assertThat(enabled(tracks.get(1))).containsOnly(true);
        assertThat(enabled(tracks.get(2))).containsOnly(false);
        assertThat(enabled(tracks.get(4))).containsOnly(true).hasSize(3);
        assertThat(enabled(tracks.get(5))).containsOnly(false);
        assertThat(enabled(otio(ExampleHandOff.filmed()).at("/tracks/children/1")))
                .containsOnly(true);
    }

    /** The recorder began a second before the take, the preferred camera four seconds before it. */
    @Test
    void theSoundOfARecorderGoesWithThePictureOfTheCamera() throws Exception {
        JsonNode tracks = otio(ExampleHandOff.severalSources()).at("/tracks/children");
        JsonNode picture = tracks.at("/1/children/0/source_range/start_time/value");
        JsonNode sound = tracks.at("/4/children/0/source_range/start_time/value");
        long camera = picture.asLong() - 1_115_796;
        // 36000 s at 29.97 are 1078921 frames; 3 s are 90 frames.
        assertThat(sound.asLong() - 1_078_921).isEqualTo(camera - 90);
    }

    /**
     * otio-cmx3600-adapter and the CMX 3600 form: picture and sound of different reels are events of their own on channels
     * {@code V} and {@code A} with the same record times.
     */
    @Test
    void theListTakesItsSoundFromTheRecorder() throws Exception {
        List<String> lines =
                lines(new EdlPart().files(ExampleHandOff.severalSources()).get(0));
        assertThat(lines)
                .startsWith(
                        "001 C0001T V C 10:20:35;09 10:20:37;14 01:00:00;00 01:00:02;05",
                        "002 REC01 A C 10:00:01;28 10:00:04;03 01:00:00;00 01:00:02;05",
                        "003 BL B C 00:00:00;00 00:00:04;01 01:00:02;05 01:00:06;06");
        assertThat(lines).filteredOn(line -> line.contains(" REC01 ")).hasSize(3);
    }

    @Test
    void eachCameraAndRecorderHasAListOfItsOwn() throws Exception {
        List<HandOffFile> files = new EdlPart().files(ExampleHandOff.severalSources());
        assertThat(files)
                .extracting(HandOffFile::name)
                .containsExactly("lesson.edl", "lesson-c0001t.edl", "lesson-b0001.edl", "lesson-rec01.edl");
        assertThat(lines(files.get(2)))
                .startsWith(
                        "001 BL B C 00:00:00;00 00:00:01;03 01:00:00;00 01:00:01;03",
                        "002 B0001 B C 11:00:00;00 11:00:01;02 01:00:01;03 01:00:02;05");
        assertThat(lines(files.get(3))).allMatch(line -> line.contains(" A C "));
        assertThat(new EdlPart().files(ExampleHandOff.filmed())).hasSize(1);
    }

    @Test
    void aGapIsBlackOnTheChannelsThatTheLessonHas() throws Exception {
        assertThat(lines(new EdlPart().files(ExampleHandOff.plain()).get(0)))
                .filteredOn(line -> line.contains(" BL "))
                .isNotEmpty()
                .allMatch(line -> line.contains(" BL A C "));
        assertThat(lines(new EdlPart().files(ExampleHandOff.filmed()).get(0)))
                .filteredOn(line -> line.contains(" BL "))
                .allMatch(line -> line.contains(" BL B C "));
    }

    /** RFC 3986: a relative reference is resolved against the place of the file that holds it. */
    @Test
    void linksAreRelativeIfTheMediaLiesBesideTheHandOff() throws Exception {
        JsonNode tracks = otio(ExampleHandOff.severalSources()).at("/tracks/children");
        assertThat(link(tracks, 0)).isEqualTo("../side/B0001.MP4");
        assertThat(link(tracks, 1)).isEqualTo("../C0001%20%C3%A9t%C3%A9.MP4");
        assertThat(link(tracks, 4)).isEqualTo("file:///recorder/REC01.WAV");
        assertThat(link(tracks, 5)).isEqualTo("lesson-take-001.wav");
        assertThat(new String(
                        bytes(new EdlPart()
                                .files(ExampleHandOff.severalSources())
                                .get(0)),
                        StandardCharsets.UTF_8))
                .contains("* SOURCE FILE: ../" + FILMED, "* SOURCE FILE: /recorder/REC01.WAV");
    }

    /**
     * OpenTimelineIO, typeRegistry.cpp and marker.cpp: version 0.18.1 has markers of version 2 and reads
     * {@code marked_range}. Later ones have markers of version 3 and first run every upgrade function from the file's
     * version on; that for version 2 puts {@code range} in the place of {@code marked_range}.
     */
    @Test
    void readersOfBothVersionsFindTheMarkers() throws Exception {
        List<JsonNode> markers = otio(ExampleHandOff.filmed()).findParents("marked_range");
        assertThat(markers).hasSizeGreaterThan(3);
        for (JsonNode marker : markers) {
            JsonNode written = marker.path("marked_range").deepCopy();
            assertThat(written.path("OTIO_SCHEMA").asText()).isEqualTo("TimeRange.1");
            ObjectNode upgraded = marker.deepCopy();
            upgraded.set("marked_range", upgraded.path("range"));
            upgraded.remove("range");
            assertThat(upgraded.path("marked_range")).isEqualTo(written);
        }
    }

    private static String link(JsonNode tracks, int track) {
        return tracks.path(track).findValue("target_url").asText();
    }

    private static List<Boolean> enabled(JsonNode track) {
        List<Boolean> enabled = new ArrayList<>();
        track.path("children").forEach(item -> {
            if (item.path("OTIO_SCHEMA").asText().equals("Clip.2")) {
                enabled.add(item.path("enabled").asBoolean());
            }
        });
        return enabled;
    }

    private static JsonNode otio(HandOff handOff) throws Exception {
        HandOffPart part = new OtioPart();
        return new ObjectMapper().readTree(bytes(part.files(handOff).get(0)));
    }

    /** The events of a list with single spaces. */
    private static List<String> lines(HandOffFile file) throws Exception {
        return new String(bytes(file), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> line.matches("\\d{3} .*"))
                .map(line -> line.replaceAll(" +", " "))
                .toList();
    }

    private static byte[] bytes(HandOffFile file) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        file.content().write(out);
        return out.toByteArray();
    }
}
