package org.bookholder.handoff.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.cutlist.Clip;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;

/**
 * A picture or clip of the author's on a timeline: from its word on, until the next direction, the paragraph's end, the next picture
 * or its own end.
 *
 * @param media its file
 * @param in its first frame on the timeline, from 0
 * @param out the frame after its last
 */
public record PlacedCoverMedia(CoverMedia media, long in, long out) {
    /** Places them in the order of the script; one whose lines are not on the timeline has no place. */
    public static List<PlacedCoverMedia> of(Timeline timeline, Script script, List<CoverMedia> media) {
        List<PlacedCoverMedia> placed = new ArrayList<>();
        for (CoverMedia each : media) {
            Cover cover = each.cover();
            int last = cover.lastLine(script.elements());
            Optional<Long> in = begin(timeline, cover.line(), cover.word())
                    .or(() -> IntStream.rangeClosed(cover.line() + 1, last)
                            .mapToObj(line -> begin(timeline, line, 1))
                            .flatMap(Optional::stream)
                            .findFirst());
            Optional<Long> out = IntStream.iterate(last, line -> line >= cover.line(), line -> line - 1)
                    .mapToObj(line -> end(timeline, line))
                    .flatMap(Optional::stream)
                    .findFirst();
            if (in.isPresent() && out.isPresent()) {
                add(placed, new PlacedCoverMedia(each, in.get(), kept(timeline, each, in.get(), out.get())));
            }
        }
        return placed;
    }

    private static long kept(Timeline timeline, CoverMedia media, long in, long out) {
        long end = Math.min(out, timeline.frames());
        return media.length()
                .map(length -> Math.min(end, in + timeline.rate().frameAt(length.ticks())))
                .orElse(end);
    }

    /** The one before ends where the next one begins. */
    private static void add(List<PlacedCoverMedia> placed, PlacedCoverMedia next) {
        if (!placed.isEmpty()) {
            PlacedCoverMedia before = placed.remove(placed.size() - 1);
            long cut = Math.min(before.out, next.in);
            if (cut > before.in) {
                placed.add(new PlacedCoverMedia(before.media, before.in, cut));
            }
        }
        if (next.out > next.in) {
            placed.add(next);
        }
    }

    /** When a word is said, or else the next one that is; with the first word of a clip the clip begins. */
    private static Optional<Long> begin(Timeline timeline, int line, int word) {
        return clip(timeline, line).map(clip -> {
            Attempt attempt = attempt(clip, line);
            if (word <= 1) {
                return frame(timeline, clip, line == clip.firstLine() ? clip.in() : attempt.start());
            }
            StreamTime said = attempt.words().stream()
                    .filter(time -> time.word() >= word)
                    .map(WordTime::start)
                    .findFirst()
                    .orElse(attempt.end());
            return frame(timeline, clip, StreamTime.max(said, clip.in()));
        });
    }

    private static Optional<Long> end(Timeline timeline, int line) {
        return clip(timeline, line)
                .map(clip -> frame(
                        timeline,
                        clip,
                        line == clip.lastLine()
                                ? clip.out()
                                : attempt(clip, line).end()));
    }

    private static Optional<Clip> clip(Timeline timeline, int line) {
        return timeline.events().stream()
                .flatMap(event -> event.item().clip().stream())
                .filter(clip -> clip.attempts().stream().anyMatch(attempt -> attempt.line() == line))
                .findFirst();
    }

    private static Attempt attempt(Clip clip, int line) {
        return clip.attempts().stream()
                .filter(attempt -> attempt.line() == line)
                .findFirst()
                .orElseThrow();
    }

    private static long frame(Timeline timeline, Clip clip, StreamTime time) {
        return timeline.rate().nearestFrame(timeline.when(clip, time).ticks());
    }
}
