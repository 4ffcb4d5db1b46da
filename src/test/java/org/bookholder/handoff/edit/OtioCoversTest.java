package org.bookholder.handoff.edit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.timeline.CoverMedia;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineEvent;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Cover;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** The author's own pictures and clips in an editor's timeline: a track of their own over the cameras (a stack shows its last one on top). */
final class OtioCoversTest {
    private static final CoverMedia STILL = new CoverMedia(
            new Cover("jar at noon.jpg", "the jar", 1, 1, 3), Path.of("/shoot/jar at noon.jpg"), Optional.empty());

    private static CoverMedia clip(double seconds) {
        return new CoverMedia(
                new Cover("bees.mp4", "bees", 5, 1, 5),
                Path.of("/elsewhere/bees.mp4"),
                Optional.of(StreamTime.ofSeconds(seconds)));
    }

    @Test
    void aPictureStandsFromItsWordUntilWhatIsReadEnds() throws Exception {
        HandOff handOff = with(List.of(STILL, clip(60)));
        JsonNode track = covers(handOff);
        long second = event(handOff.timeline(), 5).in();
        assertThat(names(track)).containsExactly("the jar", "", "bees");
        assertThat(frames(track, 0)).isEqualTo(event(handOff.timeline(), 1).frames());
        assertThat(frames(track, 1))
                .isEqualTo(second - event(handOff.timeline(), 1).out());
        assertThat(frames(track, 2)).isEqualTo(event(handOff.timeline(), 5).frames());
        JsonNode still = track.at("/children/0/media_references/DEFAULT_MEDIA");
        assertThat(still.path("target_url").asText()).isEqualTo("../jar%20at%20noon.jpg");
        assertThat(still.path("available_range").isNull()).isTrue();
    }

    @Test
    void aClipThatIsShorterThanItsPlaceEndsBefore() throws Exception {
        HandOff handOff = with(List.of(clip(1)));
        JsonNode track = covers(handOff);
        long rate = Math.round(handOff.timeline().rate().perSecond());
        assertThat(names(track)).containsExactly("", "bees");
        assertThat(frames(track, 0)).isEqualTo(event(handOff.timeline(), 5).in());
        assertThat(frames(track, 1)).isBetween(rate - 1, rate);
        assertThat(track.at("/children/1/media_references/DEFAULT_MEDIA/available_range/duration/value")
                        .asLong())
                .isEqualTo(frames(track, 1));
        assertThat(track.at("/children/1/media_references/DEFAULT_MEDIA/target_url")
                        .asText())
                .isEqualTo("file:///elsewhere/bees.mp4");
    }

    @Test
    void theTrackLiesOverTheCamerasAndIsNotThereWithoutPictures() throws Exception {
        assertThat(kinds(with(List.of(STILL))))
                .containsSubsequence("Covers", "Audio")
                .doesNotContainSequence("Covers", "Video");
        assertThat(kinds(with(List.of()))).doesNotContain("Covers");
    }

    /** A picture of a line that nobody read has no place. */
    @Test
    void aPictureWhoseLinesAreNotThereIsLeftOut() throws Exception {
        CoverMedia last =
                new CoverMedia(new Cover("end.png", "the end", 6, 1, 9), Path.of("/shoot/end.png"), Optional.empty());
        assertThat(kinds(with(List.of(last)))).doesNotContain("Covers");
    }

    private static HandOff with(List<CoverMedia> covers) {
        HandOff plain = ExampleHandOff.plain();
        return new HandOff(
                plain.folder(),
                plain.name(),
                plain.state(),
                plain.events(),
                plain.cut(),
                plain.timeline(),
                plain.media(),
                covers,
                plain.sound(),
                plain.zone());
    }

    private static TimelineEvent event(Timeline timeline, int line) {
        return timeline.events().stream()
                .filter(event -> event.item().clip().isPresent() && event.item().firstLine() == line)
                .findFirst()
                .orElseThrow();
    }

    private static List<String> kinds(HandOff handOff) throws Exception {
        return StreamSupport.stream(tracks(handOff).spliterator(), false)
                .map(track -> track.path("name").asText().equals("Covers")
                        ? "Covers"
                        : track.path("kind").asText())
                .toList();
    }

    private static JsonNode covers(HandOff handOff) throws Exception {
        return StreamSupport.stream(tracks(handOff).spliterator(), false)
                .filter(track -> track.path("name").asText().equals("Covers"))
                .findFirst()
                .orElseThrow();
    }

    private static JsonNode tracks(HandOff handOff) throws IOException, ProblemException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new OtioPart().files(handOff).get(0).content().write(out);
        return new ObjectMapper().readTree(out.toByteArray()).at("/tracks/children");
    }

    private static List<String> names(JsonNode track) {
        return StreamSupport.stream(track.path("children").spliterator(), false)
                .map(child -> child.path("name").asText())
                .toList();
    }

    private static long frames(JsonNode track, int child) {
        return track.at("/children/" + child + "/source_range/duration/value").asLong();
    }
}
