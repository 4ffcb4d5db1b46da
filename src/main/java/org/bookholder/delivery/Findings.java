package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.timing.StreamTime;

/** Collects findings, a limited number of each kind. Confined to one thread. */
final class Findings {
    /** This many of a kind are listed one by one. */
    private static final int MOST = 30;

    private final List<Finding> kept = new ArrayList<>();
    private final Map<String, Integer> counts = new LinkedHashMap<>();

    void add(Finding finding) {
        if (counts.merge(finding.kind(), 1, Integer::sum) <= MOST) {
            kept.add(finding);
        }
    }

    /** Findings about the whole film first, then by time; at the end the number of those left out. */
    List<Finding> all() {
        List<Finding> all = new ArrayList<>(kept);
        all.sort(Comparator.comparing(f -> f.place().map(p -> p.start().ticks()).orElse(StreamTime.ZERO.ticks() - 1)));
        counts.forEach((kind, count) -> {
            if (count > MOST) {
                all.add(Finding.ofAll(
                        Grade.LOOK,
                        kind,
                        (count - MOST) + " more of this kind",
                        "fix the others first, and check again"));
            }
        });
        return all;
    }
}
