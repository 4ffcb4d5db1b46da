package org.bookholder.handoff.edit;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.bookholder.handoff.timeline.PlacedCoverMedia;

/** The video track with the author's own pictures and clips, which lies over the cameras. */
final class OtioCovers {
    private OtioCovers() {}

    /**
     * The track.
     *
     * @param covers in the order of the timeline, at least one
     */
    static ObjectNode track(OtioNodes nodes, MediaLinks links, List<PlacedCoverMedia> covers) {
        ObjectNode track = nodes.item("Track.1", "Covers");
        track.put("kind", "Video");
        long at = 0;
        for (PlacedCoverMedia cover : covers) {
            if (cover.in() > at) {
                ObjectNode gap = nodes.item("Gap.1", "");
                gap.set("source_range", nodes.range(0, cover.in() - at));
                track.withArray("children").add(gap);
            }
            track.withArray("children").add(clip(nodes, links, cover));
            at = cover.out();
        }
        return track;
    }

    private static ObjectNode clip(OtioNodes nodes, MediaLinks links, PlacedCoverMedia cover) {
        ObjectNode clip = nodes.item("Clip.2", cover.media().cover().text());
        clip.set("source_range", nodes.range(0, cover.out() - cover.in()));
        clip.withObject("/metadata/bookholder")
                .put("first_line", cover.media().cover().line());
        ObjectNode media = nodes.object(
                "ExternalReference.1", String.valueOf(cover.media().file().getFileName()));
        // A still picture has no end of its own: no range, as OpenTimelineIO has it for what is not known.
        cover.media()
                .length()
                .ifPresentOrElse(
                        length -> media.set("available_range", nodes.range(0, nodes.frames(length))),
                        () -> media.putNull("available_range"));
        media.putNull("available_image_bounds");
        media.put("target_url", links.uri(cover.media().file()));
        clip.put("active_media_reference_key", "DEFAULT_MEDIA");
        clip.withObject("/media_references").set("DEFAULT_MEDIA", media);
        return clip;
    }
}
