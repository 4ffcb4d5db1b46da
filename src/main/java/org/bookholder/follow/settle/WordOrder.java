package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Corrects the times of one ear's words so that they lie within the take and in the order of the reports: no word
 * begins or ends before the previous one, and none ends after the sound heard so far. All other code relies on that.
 */
final class WordOrder {
    private StreamTime start;
    private StreamTime end;

    /** Creates one for a take whose audio begins at {@code start}. */
    WordOrder(StreamTime start) {
        this.start = start;
        this.end = start;
    }

    /** The words of an utterance; times that are out of order are moved as little as possible. */
    List<RecognizedWord> of(Hypothesis.Final utterance) {
        StreamTime limit = StreamTime.max(end, utterance.heardTo());
        List<RecognizedWord> words = new ArrayList<>();
        for (RecognizedWord word : utterance.words()) {
            start = StreamTime.min(StreamTime.max(start, word.start()), limit);
            end = StreamTime.min(StreamTime.max(StreamTime.max(end, start), word.end()), limit);
            boolean inOrder = start.equals(word.start()) && end.equals(word.end());
            words.add(inOrder ? word : new RecognizedWord(word.text(), start, end, word.confidence()));
        }
        return words;
    }
}
