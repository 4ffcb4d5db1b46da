package org.bookholder.handoff.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CoverSpan;
import org.bookholder.follow.model.Attempt;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;

/**
 * A picture or clip of the author's on a timeline ({@link CoverSpan}); a clip ends with its file at the latest.
 *
 * @param media its file
 * @param in its first frame on the timeline, from 0
 * @param out the frame after its last
 */
public record PlacedCoverMedia(CoverMedia media, long in, long out) {
    /** Places them in the order of the script; one whose lines are not on the timeline has no place. */
    public static List<PlacedCoverMedia> of(Timeline timeline, Script script, List<CoverMedia> media) {
        Map<Cover, CoverMedia> files = media.stream()
                .collect(Collectors.toMap(CoverMedia::cover, Function.identity(), (first, same) -> first));
        List<Cover> covers = media.stream().map(CoverMedia::cover).toList();
        List<PlacedCoverMedia> placed = new ArrayList<>();
        for (CoverSpan span : CoverSpan.of(covers, script, new Frames(timeline), timeline.frames())) {
            CoverMedia file = Objects.requireNonNull(files.get(span.cover()));
            long out = file.length()
                    .map(length ->
                            Math.min(span.to(), span.from() + timeline.rate().frameAt(length.ticks())))
                    .orElse(span.to());
            if (out > span.from()) {
                placed.add(new PlacedCoverMedia(file, span.from(), out));
            }
        }
        return placed;
    }

    /** In which frame of a timeline lines and words are said. */
    private record Frames(Timeline timeline) implements CoverSpan.LineFrames {
        @Override
        public Optional<Long> begin(int line) {
            return clip(line)
                    .map(clip -> frame(
                            clip,
                            line == clip.firstLine()
                                    ? clip.in()
                                    : attempt(clip, line).start()));
        }

        @Override
        public Optional<Long> word(int line, int word) {
            if (word <= 1) {
                return begin(line);
            }
            return clip(line)
                    .map(clip -> frame(clip, StreamTime.max(attempt(clip, line).startOf(word), clip.in())));
        }

        @Override
        public Optional<Long> end(int line) {
            return clip(line)
                    .map(clip -> frame(
                            clip,
                            line == clip.lastLine()
                                    ? clip.out()
                                    : attempt(clip, line).end()));
        }

        private Optional<Clip> clip(int line) {
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

        private long frame(Clip clip, StreamTime time) {
            return timeline.rate().nearestFrame(timeline.when(clip, time).ticks());
        }
    }
}
