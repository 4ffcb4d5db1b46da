package org.bookholder.handoff.edit;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.Source;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineEvent;
import org.bookholder.wording.MarkerText;

/**
 * The cut list as an OpenTimelineIO timeline, with a video track where there is footage and an audio track.
 *
 * <p>Schemas and fields from its documentation (otio-serialized-schema-only-fields.md). It writes Clip.2 and Marker.2,
 * which releases 0.15 to 0.18 write and later ones read.
 */
public final class OtioPart implements HandOffPart {
    @Override
    public String name() {
        return "otio";
    }

    @Override
    public String description() {
        return "the cut list as an OpenTimelineIO timeline";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return List.of(HandOffFile.text(handOff.name() + ".otio", out -> write(handOff, out)));
    }

    private static void write(HandOff handOff, Appendable out) throws IOException {
        Timeline timeline = handOff.timeline();
        OtioNodes nodes = new OtioNodes(timeline.rate());
        ObjectNode root = nodes.object("Timeline.1", handOff.state().script().title());
        root.set("global_start_time", nodes.time(timeline.begin()));
        ObjectNode stack = nodes.item("Stack.1", "tracks");
        root.set("tracks", stack);
        boolean seen = handOff.media().stream().anyMatch(m -> m.picture().isPresent());
        if (seen) {
            stack.withArray("children").add(track(nodes, handOff, "Video", true));
        }
        stack.withArray("children").add(track(nodes, handOff, "Audio", !seen));
        out.append(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(root))
                .append('\n');
    }

    private static ObjectNode track(OtioNodes nodes, HandOff handOff, String kind, boolean marked) {
        ObjectNode track = nodes.item("Track.1", kind);
        track.put("kind", kind);
        for (TimelineEvent event : handOff.timeline().events()) {
            track.withArray("children").add(event(nodes, handOff, event, kind.equals("Video"), marked));
        }
        return track;
    }

    private static ObjectNode event(
            OtioNodes nodes, HandOff handOff, TimelineEvent event, boolean video, boolean marked) {
        boolean shown = event.source()
                .filter(s -> video ? s.media().picture().isPresent() : s.media().sounding())
                .isPresent();
        ObjectNode node = shown
                ? clip(nodes, event, event.source().orElseThrow())
                : nodes.item(
                        "Gap.1",
                        event.item().clip().isPresent()
                                ? ""
                                : "line " + event.item().lines());
        long start = shown ? event.source().orElseThrow().in() : 0;
        node.set("source_range", nodes.range(start, event.frames()));
        if (marked) {
            ArrayNode markers = node.withArray("markers");
            for (Timeline.PlacedMarker placed : handOff.timeline().markers(event)) {
                String text = MarkerText.of(handOff.state(), placed.marker());
                markers.add(marker(nodes, MarkerLook.of(placed.marker()), text, start + placed.frame() - event.in()));
            }
        }
        if (shown && video) {
            ObjectNode metadata = node.withObject("/metadata/bookholder");
            metadata.put("scale", event.framing() / 100.0);
        }
        return node;
    }

    private static ObjectNode clip(OtioNodes nodes, TimelineEvent event, Source source) {
        ObjectNode clip = nodes.item(
                "Clip.2",
                "line" + (event.item().firstLine() == event.item().lastLine() ? " " : "s ")
                        + event.item().lines());
        ObjectNode metadata = clip.withObject("/metadata/bookholder");
        metadata.put("first_line", event.item().firstLine());
        metadata.put("last_line", event.item().lastLine());
        metadata.put("take", source.media().placement().take());
        clip.put("active_media_reference_key", "DEFAULT_MEDIA");
        clip.withObject("/media_references").set("DEFAULT_MEDIA", media(nodes, source.media()));
        return clip;
    }

    private static ObjectNode media(OtioNodes nodes, Media media) {
        ObjectNode node = nodes.object("ExternalReference.1", media.name());
        node.set("available_range", nodes.range(media.firstFrame(), media.frames()));
        node.putNull("available_image_bounds");
        node.put("target_url", media.file().toUri().toString());
        return node;
    }

    private static ObjectNode marker(OtioNodes nodes, MarkerLook look, String text, long frame) {
        ObjectNode node = nodes.object("Marker.2", look.name());
        node.put("color", look.colour());
        node.put("comment", text);
        node.set("marked_range", nodes.range(frame, 0));
        return node;
    }
}
