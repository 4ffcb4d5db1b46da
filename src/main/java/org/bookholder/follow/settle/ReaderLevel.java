package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.StreamTime;

/**
 * How loud the reader is in a take. Speech that is much softer is somebody else's, further away from the microphone. Confined to one
 * thread.
 */
final class ReaderLevel {
    /** How far below the reader's level other people's talk begins, in dB. */
    private static final int FAR_DB = 10;

    /** With fewer readings, too little is known of the reader. */
    private static final int FEWEST = 3;

    private final Loudness loudness;
    private final List<Integer> levels = new ArrayList<>();

    ReaderLevel(Loudness loudness) {
        this.loudness = loudness;
    }

    /** Takes in a reading of a line. */
    void add(Attempt attempt) {
        loudness.loud(attempt.start(), attempt.end()).ifPresent(levels::add);
    }

    /** Whether what was said in a stretch is too soft to be the reader's; no, while too little is known. */
    boolean isFar(StreamTime start, StreamTime end) {
        return levels.size() >= FEWEST && loudness.loud(start, end).orElse(0) < median() - FAR_DB;
    }

    private int median() {
        return levels.stream().sorted().skip(levels.size() / 2).findFirst().orElseThrow();
    }
}
