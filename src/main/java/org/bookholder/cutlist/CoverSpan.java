package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;

/**
 * Where a picture or clip of the author's lies over what is read: from its word on, until the next direction, the paragraph's end or
 * the next picture.
 *
 * @param cover what the script says of it
 * @param from its first frame, from 0
 * @param to the frame behind its last
 */
public record CoverSpan(Cover cover, long from, long to) {
    /** In which frame lines and words are said; empty for a line that is left out. */
    public interface LineFrames {
        /** Where a line begins, with the quiet before it. */
        Optional<Long> begin(int line);

        /** Where a word is said, or else the next one that is; with the first word the line begins. */
        Optional<Long> word(int line, int word);

        /** Where a line ends. */
        Optional<Long> end(int line);
    }

    /**
     * Places them in the order of the script; one whose lines are left out has no place.
     *
     * @param length how many frames there are
     */
    public static List<CoverSpan> of(List<Cover> covers, Script script, LineFrames frames, long length) {
        List<CoverSpan> placed = new ArrayList<>();
        for (Cover cover : covers) {
            int last = cover.lastLine(script.elements());
            Optional<Long> from = frames.word(cover.line(), cover.word())
                    .or(() -> IntStream.rangeClosed(cover.line() + 1, last)
                            .mapToObj(frames::begin)
                            .flatMap(Optional::stream)
                            .findFirst());
            Optional<Long> to = IntStream.iterate(last, line -> line >= cover.line(), line -> line - 1)
                    .mapToObj(frames::end)
                    .flatMap(Optional::stream)
                    .findFirst();
            if (from.isPresent() && to.isPresent()) {
                add(placed, new CoverSpan(cover, from.get(), Math.min(length, to.get())));
            }
        }
        return placed;
    }

    /** The one before ends where the next one begins. */
    private static void add(List<CoverSpan> placed, CoverSpan next) {
        if (!placed.isEmpty()) {
            CoverSpan before = placed.remove(placed.size() - 1);
            long cut = Math.min(before.to, next.from);
            if (cut > before.from) {
                placed.add(new CoverSpan(before.cover, before.from, cut));
            }
        }
        if (next.to > next.from) {
            placed.add(next);
        }
    }
}
