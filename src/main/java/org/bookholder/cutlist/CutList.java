package org.bookholder.cutlist;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * The cut of a lesson: clips and gaps in script order. Every line of the script is in exactly one of
 * them, but for those that were left out on purpose.
 *
 * @param items clips and gaps, each beginning where the one before ends
 */
public record CutList(List<CutItem> items) {
    /** Copies the list. */
    public CutList {
        items = List.copyOf(items);
    }

    /** How long the cut lesson is. */
    public StreamTime length() {
        return items.stream().map(CutItem::length).reduce(StreamTime.ZERO, StreamTime::plus);
    }

    /** The clips, without the gaps. */
    public List<Clip> clips() {
        return items.stream().flatMap(item -> item.clip().stream()).toList();
    }

    /** Number of visible cuts: places where one clip directly follows another. */
    public int cuts() {
        int cuts = 0;
        for (int i = 1; i < items.size(); i++) {
            cuts += items.get(i - 1).clip().isPresent() && items.get(i).clip().isPresent() ? 1 : 0;
        }
        return cuts;
    }
}
