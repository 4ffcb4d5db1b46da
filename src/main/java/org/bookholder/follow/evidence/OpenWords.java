package org.bookholder.follow.evidence;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** The words that the open ear heard in a take, in order of time. */
public final class OpenWords {
    private final List<RecognizedWord> words = new ArrayList<>();
    private StreamTime heardTo = StreamTime.ZERO;

    public void add(List<RecognizedWord> more, StreamTime to) {
        words.addAll(more);
        heardTo = to;
    }

    /** How much of the take's audio the words cover. */
    public StreamTime heardTo() {
        return heardTo;
    }

    /** The words whose middle lies from {@code start} to {@code end}. */
    public List<RecognizedWord> between(StreamTime start, StreamTime end) {
        List<RecognizedWord> result = new ArrayList<>();
        for (int i = firstEndingAfter(start);
                i < words.size() && words.get(i).start().isBefore(end);
                i++) {
            long middle = (words.get(i).start().ticks() + words.get(i).end().ticks()) / 2;
            if (middle >= start.ticks() && middle <= end.ticks()) {
                result.add(words.get(i));
            }
        }
        return result;
    }

    private int firstEndingAfter(StreamTime time) {
        int low = 0;
        int high = words.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (words.get(middle).end().isBefore(time)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
