package org.bookholder.handoff.timeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutItem;
import org.bookholder.cutlist.CutList;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.session.FilmChoices;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;

/**
 * Counts a cut in frames. Each boundary is rounded once, from its own time to the nearest frame of its file; the
 * timeline adds up whole frames, so rounding errors do not accumulate.
 */
public final class TimelineBuilder {
    /** A gap of this many frames or fewer between two files is closed. */
    private static final int SLIVER = 2;

    private final FrameRate rate;
    private final List<Media> media;
    private final List<TimelineEvent> events = new ArrayList<>();
    private long now;

    private TimelineBuilder(FrameRate rate, List<Media> media) {
        this.rate = rate;
        this.media = media;
    }

    /**
     * The timeline of a cut.
     *
     * @param timecode how frames are counted
     * @param media the files to use; if several show the same moment, the first one is used
     * @param punchIn how the framing alternates
     */
    public static Timeline build(CutList cut, Timecode timecode, List<Media> media, PunchIn punchIn) {
        TimelineBuilder builder = new TimelineBuilder(timecode.rate(), media);
        cut.items().forEach(item -> item.clip().ifPresentOrElse(builder::add, () -> builder.addGap(item)));
        return new Timeline(timecode, builder.framed(punchIn));
    }

    private void addGap(CutItem gap) {
        long frames = Math.max(1, rate.nearestFrame(gap.length().ticks()));
        events.add(new TimelineEvent(gap, Optional.empty(), now, now + frames, true, true, PunchIn.FULL));
        now += frames;
    }

    private void add(Clip clip) {
        List<Source> pieces = new ArrayList<>();
        StreamTime from = clip.in();
        // The camera that someone wants for the line goes before the others.
        List<Media> ordered = media.stream()
                .sorted(Comparator.comparing(m -> !clip.camera().equals(Optional.of(m.name()))))
                .toList();
        while (from.isBefore(clip.out())) {
            StreamTime at = from;
            Media use = ordered.stream()
                    .filter(m -> shows(m, clip.take(), at))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "take " + clip.take() + " at " + at.seconds() + " s must lie in a file"));
            StreamTime to = StreamTime.min(clip.out(), end(ordered, use, clip.take(), at));
            pieces.add(source(use, from, to));
            from = to;
        }
        pieces.removeIf(piece -> piece.in() >= piece.out());
        for (int i = 0; i < pieces.size(); i++) {
            Source piece = pieces.get(i);
            long frames = piece.out() - piece.in();
            events.add(new TimelineEvent(
                    clip, Optional.of(piece), now, now + frames, i == 0, i == pieces.size() - 1, PunchIn.FULL));
            now += frames;
        }
    }

    /**
     * Whether a file shows a moment, or begins within two frames of it: cameras lose nothing between two parts of a
     * split file.
     */
    private boolean shows(Media m, int take, StreamTime at) {
        return m.placement().take() == take
                && !at.plus(rate.length(SLIVER)).isBefore(m.placement().from())
                && at.isBefore(m.placement().to());
    }

    /** The time until which a file is used: to its end, or until a preferred one begins. */
    private static StreamTime end(List<Media> ordered, Media use, int take, StreamTime from) {
        return ordered.subList(0, ordered.indexOf(use)).stream()
                .filter(better -> better.placement().take() == take)
                .map(better -> better.placement().from())
                .filter(from::isBefore)
                .min(Comparator.naturalOrder())
                .map(comes -> StreamTime.min(comes, use.placement().to()))
                .orElse(use.placement().to());
    }

    private Source source(Media use, StreamTime from, StreamTime to) {
        long in = Math.max(0, rate.nearestFrame(use.placement().inFile(from)));
        long out = Math.min(
                use.frames(), Math.max(in + 1, rate.nearestFrame(use.placement().inFile(to))));
        return new Source(use, use.firstFrame() + in, use.firstFrame() + out);
    }

    private List<TimelineEvent> framed(PunchIn punchIn) {
        List<PunchIn.Piece> pieces = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            // A recording that continues in the next file is not a cut.
            if (events.get(i).opens()) {
                pieces.add(new PunchIn.Piece(i > 0 && sameShot(events.get(i - 1), events.get(i)), wish(events.get(i))));
            }
        }
        List<Integer> plan = punchIn.plan(pieces);
        List<TimelineEvent> framed = new ArrayList<>();
        int items = 0;
        for (TimelineEvent event : events) {
            items += event.opens() ? 1 : 0;
            framed.add(event.framed(plan.get(items - 1)));
        }
        return framed;
    }

    private static FilmChoices.Framing wish(TimelineEvent event) {
        return event.item().clip().map(Clip::framing).orElse(FilmChoices.Framing.PLANNED);
    }

    private static boolean sameShot(TimelineEvent before, TimelineEvent event) {
        return before.source().isPresent()
                && event.source().isPresent()
                && before.source().get().media().picture().isPresent()
                && event.source().get().media().picture().isPresent();
    }
}
