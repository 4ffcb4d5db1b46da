package org.bookholder.handoff.edit;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.PlacedCoverMedia;
import org.bookholder.handoff.timeline.Source;
import org.bookholder.handoff.timeline.SourceTrack;
import org.bookholder.handoff.timeline.SourceTrack.Piece;
import org.bookholder.handoff.timeline.SourceTracks;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineEvent;
import org.bookholder.wording.MarkerText;

/**
 * The cut list as an OpenTimelineIO timeline: a video track for each camera, one for the author's own pictures and clips, and an audio
 * track for each source of sound.
 *
 * <p>A stack shows its last track on top, so the camera that the cut prefers comes after the others, and what covers it behind it. Of
 * several sounds at one moment only the best is enabled.
 *
 * <p>Schemas and fields from its documentation (otio-serialized-schema-only-fields.md). It writes Clip.2 and Marker.2,
 * which releases 0.15 to 0.18 write. A reader whose own markers are of version 3 renames {@code range} of every older
 * marker to {@code marked_range} (typeRegistry.cpp: upgrade functions run from the file's version on), so a marker has
 * both.
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
        OtioNodes nodes = new OtioNodes(handOff.timeline().rate());
        ObjectNode root = nodes.object("Timeline.1", handOff.state().script().title());
        root.set("global_start_time", nodes.time(handOff.timeline().begin()));
        ObjectNode stack = nodes.item("Stack.1", "tracks");
        root.set("tracks", stack);
        new Tracks(handOff, nodes).all().forEach(stack.withArray("children")::add);
        out.append(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(root))
                .append('\n');
    }

    private static final class Tracks {
        private final HandOff handOff;
        private final Timeline timeline;
        private final OtioNodes nodes;
        private final MediaLinks links;
        private final List<SourceTrack> sources;
        private final List<Piece> heard;

        Tracks(HandOff handOff, OtioNodes nodes) {
            this.handOff = handOff;
            this.nodes = nodes;
            timeline = handOff.timeline();
            links = new MediaLinks(handOff.folder());
            sources = SourceTracks.each(timeline, handOff.media());
            heard = SourceTracks.sound(timeline, handOff.media());
        }

        /** The video tracks with the preferred one last and what covers it, then the audio tracks; the preferred track has the markers. */
        List<ObjectNode> all() {
            List<ObjectNode> tracks = new ArrayList<>();
            for (SourceTrack source : sources) {
                if (source.kind() == Media.Kind.CAMERA) {
                    tracks.add(0, track("Video", source.name(), source.pieces(), tracks.isEmpty()));
                }
            }
            int cameras = tracks.size();
            for (SourceTrack source : sources) {
                if (source.sounding()) {
                    tracks.add(track("Audio", source.name(), parts(source), tracks.isEmpty()));
                }
            }
            if (tracks.isEmpty()) {
                tracks.add(track("Audio", "Audio", heard, true));
            }
            List<PlacedCoverMedia> covers =
                    PlacedCoverMedia.of(timeline, handOff.state().script(), handOff.covers());
            if (!covers.isEmpty()) {
                tracks.add(cameras, OtioCovers.track(nodes, links, covers));
            }
            return tracks;
        }

        private ObjectNode track(String kind, String name, List<Piece> pieces, boolean marked) {
            ObjectNode track = nodes.item("Track.1", name);
            track.put("kind", kind);
            pieces.forEach(piece -> track.withArray("children").add(piece(piece, kind.equals("Video"), marked)));
            return track;
        }

        /** The pieces of a source of sound, split where another sound becomes the best one. */
        private List<Piece> parts(SourceTrack track) {
            List<Piece> parts = new ArrayList<>();
            for (Piece piece : track.pieces()) {
                Piece rest = piece;
                for (Piece best : heard) {
                    if (rest.in() < best.in() && best.in() < rest.out()) {
                        parts.add(rest.until(best.in()));
                        rest = rest.from(best.in());
                    }
                }
                parts.add(rest);
            }
            return parts;
        }

        private ObjectNode piece(Piece piece, boolean video, boolean marked) {
            TimelineEvent event = piece.event();
            Optional<Source> source =
                    piece.source().filter(s -> video || s.media().sounding());
            ObjectNode node = source.map(s -> clip(event, s)).orElseGet(() -> gap(event));
            long start = source.map(Source::in).orElse(0L);
            node.set("source_range", nodes.range(start, piece.frames()));
            if (marked) {
                timeline.markers(event).stream()
                        .filter(placed -> piece.holds(placed.frame()))
                        .forEach(placed ->
                                node.withArray("markers").add(marker(placed, start + placed.frame() - piece.in())));
            }
            if (source.isPresent() && video) {
                node.withObject("/metadata/bookholder").put("scale", event.framing() / 100.0);
                if (hides(source.get().media(), event)) {
                    node.put("enabled", false);
                }
            } else if (source.isPresent()) {
                node.put("enabled", best(piece));
                source.get()
                        .media()
                        .channelsHeard()
                        .ifPresent(channels ->
                                node.withObject("/metadata/bookholder").put("channels", channels));
            }
            return node;
        }

        /** Whether a camera's track lies over that of the one which the cut shows there. */
        private boolean hides(Media media, TimelineEvent event) {
            Media shown = event.source().orElseThrow().media();
            return shown.picture().isPresent() && !shown.file().equals(media.file()) && track(media) < track(shown);
        }

        private int track(Media media) {
            return IntStream.range(0, sources.size())
                    .filter(i -> sources.get(i).media().stream()
                            .anyMatch(one -> one.file().equals(media.file())))
                    .findFirst()
                    .orElse(sources.size());
        }

        /** Whether a piece has the best sound at its moment. */
        private boolean best(Piece piece) {
            return heard.stream()
                    .filter(best -> best.in() <= piece.in() && piece.in() < best.out())
                    .flatMap(best -> best.source().stream())
                    .anyMatch(best ->
                            best.media().equals(piece.source().orElseThrow().media()));
        }

        private ObjectNode gap(TimelineEvent event) {
            return nodes.item(
                    "Gap.1",
                    event.item().clip().isPresent()
                            ? ""
                            : "line " + event.item().lines());
        }

        private ObjectNode clip(TimelineEvent event, Source source) {
            ObjectNode clip = nodes.item(
                    "Clip.2",
                    "line" + (event.item().firstLine() == event.item().lastLine() ? " " : "s ")
                            + event.item().lines());
            ObjectNode metadata = clip.withObject("/metadata/bookholder");
            metadata.put("first_line", event.item().firstLine());
            metadata.put("last_line", event.item().lastLine());
            metadata.put("take", source.media().placement().take());
            clip.put("active_media_reference_key", "DEFAULT_MEDIA");
            clip.withObject("/media_references").set("DEFAULT_MEDIA", media(source.media()));
            return clip;
        }

        private ObjectNode media(Media media) {
            ObjectNode node = nodes.object("ExternalReference.1", media.name());
            node.set("available_range", nodes.range(media.firstFrame(), media.frames()));
            node.putNull("available_image_bounds");
            node.put("target_url", links.uri(media));
            return node;
        }

        private ObjectNode marker(Timeline.PlacedMarker placed, long frame) {
            MarkerLook look = MarkerLook.of(placed.marker());
            ObjectNode node = nodes.object("Marker.2", look.name());
            node.put("color", look.colour());
            node.put("comment", MarkerText.of(handOff.state(), placed.marker()));
            node.set("marked_range", nodes.range(frame, 0));
            node.set("range", nodes.range(frame, 0));
            return node;
        }
    }
}
