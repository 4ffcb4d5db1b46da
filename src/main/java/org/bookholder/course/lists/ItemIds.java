package org.bookholder.course.lists;

import java.util.HashMap;
import java.util.Map;

/** Makes the ids of a list's items different: a second one of the same words gets a number. Used by one thread. */
final class ItemIds {
    private final Map<String, Integer> seen = new HashMap<>();

    String of(String words) {
        int nth = seen.merge(words, 1, Integer::sum);
        return nth == 1 ? words : words + " (" + nth + ")";
    }
}
