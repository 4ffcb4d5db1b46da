package org.bookholder.cutlist;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * A lesson as it is to be cut: clips and gaps in script order. Every line of the script is in one of them.
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

    /** How often a viewer sees a cut: where one clip meets the next. */
    public int cuts() {
        int cuts = 0;
        for (int i = 1; i < items.size(); i++) {
            cuts += items.get(i - 1).clip().isPresent() && items.get(i).clip().isPresent() ? 1 : 0;
        }
        return cuts;
    }
}
