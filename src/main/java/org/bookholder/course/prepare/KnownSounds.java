package org.bookholder.course.prepare;

import java.util.HashMap;
import java.util.Map;
import org.bookholder.script.pronounce.Sounding;

/**
 * How the words of several scripts sound, each worked out once: the lessons of a course say the same words again and again. Used by one
 * thread at a time.
 */
public final class KnownSounds {
    private final Map<String, Integer> syllables = new HashMap<>();
    private final Map<String, String> onsets = new HashMap<>();

    /** As {@link Sounding#syllables}. */
    int syllables(String spoken) {
        return syllables.computeIfAbsent(spoken, Sounding::syllables);
    }

    /** As {@link Sounding#onset}. */
    String onset(String spoken) {
        return onsets.computeIfAbsent(spoken, Sounding::onset);
    }
}
