package org.bookholder.handoff.timeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.footage.Placement;
import org.bookholder.handoff.timeline.SourceTrack.Piece;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * The tracks of a timeline's sources: what each of them has at every moment of the cut, frame by frame beside the files
 * that the cut itself uses.
 */
public final class SourceTracks {
    private final Timeline timeline;
    private final FrameRate rate;

    private SourceTracks(Timeline timeline) {
        this.timeline = timeline;
        rate = timeline.rate();
    }

    /** A track for each camera, each recorder and our own recordings, in the order of the files. */
    public static List<SourceTrack> each(Timeline timeline, List<Media> media) {
        SourceTracks tracks = new SourceTracks(timeline);
        Map<Path, List<Media>> files = new LinkedHashMap<>();
        for (Media one : media) {
            // Each of our own takes has a file of its own.
            files.computeIfAbsent(one.file(), file -> new ArrayList<>()).add(one);
        }
        List<List<Media>> groups = new ArrayList<>();
        for (List<Media> file : files.values()) {
            groups.stream()
                    .filter(group -> file.stream().allMatch(one -> continues(group, one)))
                    .findFirst()
                    .ifPresentOrElse(group -> group.addAll(file), () -> groups.add(new ArrayList<>(file)));
        }
        return groups.stream()
                .map(group -> new SourceTrack(group, tracks.pieces(group)))
                .toList();
    }

    /** The sound at each moment: the one that comes first among those of its take. */
    public static List<Piece> sound(Timeline timeline, List<Media> media) {
        List<Media> best = media.stream()
                .filter(Media::sounding)
                .sorted(Comparator.comparingInt(Media::rank))
                .toList();
        return new SourceTracks(timeline).pieces(best);
    }

    /** Whether a file is another one of the same device: like the others, beside them, and of other moments. */
    private static boolean continues(List<Media> group, Media file) {
        Media first = group.get(0);
        boolean alike = first.kind() == file.kind() && first.picture().equals(file.picture());
        return alike
                && Objects.equals(folder(first), folder(file))
                && group.stream().noneMatch(other -> overlap(other.placement(), file.placement()));
    }

    private static Optional<Path> folder(Media media) {
        return Optional.ofNullable(media.file().getParent());
    }

    private static boolean overlap(Placement a, Placement b) {
        StreamTime from = StreamTime.max(a.from(), b.from());
        StreamTime to = StreamTime.min(a.to(), b.to());
        return a.take() == b.take() && to.since(from).compareTo(StreamTime.ofSeconds(1)) > 0;
    }

    private List<Piece> pieces(List<Media> candidates) {
        List<Piece> pieces = new ArrayList<>();
        for (TimelineEvent event : timeline.events()) {
            long at = event.in();
            while (at < event.out()) {
                Piece piece = piece(event, candidates, at);
                pieces.add(piece);
                at = piece.out();
            }
        }
        return pieces;
    }

    /** The piece of an event that begins at a frame of the timeline. */
    private Piece piece(TimelineEvent event, List<Media> candidates, long at) {
        if (event.source().isEmpty()) {
            return new Piece(event, Optional.empty(), at, event.out());
        }
        Source used = event.source().get();
        int take = used.media().placement().take();
        StreamTime time = used.media().sessionTime(used.in() + at - event.in(), rate);
        for (int i = 0; i < candidates.size(); i++) {
            Media media = candidates.get(i);
            long first = media.equals(used.media())
                    ? used.in() - media.firstFrame() + at - event.in()
                    : rate.nearestFrame(media.placement().inFile(time));
            long room = media.equals(used.media()) ? event.out() - at : room(media, take, first, time);
            if (room > 0) {
                long begun = begins(candidates.subList(0, i), take, time)
                        .map(better -> frames(time, better))
                        .orElse(room);
                long frames = Math.min(event.out() - at, Math.min(room, begun));
                long in = media.firstFrame() + first;
                return new Piece(event, Optional.of(new Source(media, in, in + frames)), at, at + frames);
            }
        }
        long wait =
                begins(candidates, take, time).map(next -> frames(time, next)).orElse(event.out() - at);
        return new Piece(event, Optional.empty(), at, Math.min(event.out(), at + wait));
    }

    /** How many frames a file has of a take from a moment on, from its frame {@code first}, counted from 0. */
    private long room(Media media, int take, long first, StreamTime time) {
        Placement placement = media.placement();
        boolean there = placement.take() == take
                && first >= 0
                && !time.plus(rate.length(1)).isBefore(placement.from())
                && time.isBefore(placement.to());
        return there ? Math.min(media.frames() - first, frames(time, placement.to())) : 0;
    }

    /** When the next of some files begins that does not yet cover a moment. */
    private static Optional<StreamTime> begins(List<Media> media, int take, StreamTime time) {
        return media.stream()
                .map(Media::placement)
                .filter(placement -> placement.take() == take && time.isBefore(placement.from()))
                .map(Placement::from)
                .min(Comparator.naturalOrder());
    }

    /** The frames between two moments, at least one. */
    private long frames(StreamTime from, StreamTime to) {
        return Math.max(1, rate.nearestFrame(to.since(from).ticks()));
    }
}
