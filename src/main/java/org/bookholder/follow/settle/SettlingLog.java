package org.bookholder.follow.settle;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Logs every input of a settler, one per line, so that a fault can be reproduced: the kind of input, a time in ticks or
 * a word of the script from 0, and for an utterance each word with its start, end and confidence.
 */
final class SettlingLog {
    private final List<String> lines = new ArrayList<>();

    SettlingLog(int take, StreamTime start, int word) {
        lines.add("take " + take + " from " + start.ticks() + " at word " + word);
    }

    void heard(Hypothesis.Final utterance) {
        StringBuilder line = new StringBuilder("heard " + utterance.ear() + " at "
                + utterance.heardTo().ticks() + " to " + utterance.end().ticks());
        for (RecognizedWord word : utterance.words()) {
            line.append(' ').append(word.text());
            line.append(' ').append(word.start().ticks());
            line.append(' ').append(word.end().ticks());
            line.append(' ').append(word.confidence());
        }
        lines.add(line.toString());
    }

    void told(String what, long value) {
        lines.add(what + " " + value);
    }

    /**
     * The whole log: first the error, then the inputs, then the level of each frame of the take (base 64, one byte in
     * dBFS each).
     */
    String text(RuntimeException cause, Loudness loudness) {
        StringWriter text = new StringWriter();
        PrintWriter print = new PrintWriter(text);
        cause.printStackTrace(print);
        print.println();
        lines.forEach(print::println);
        print.println("levels " + Base64.getEncoder().encodeToString(loudness.levels()));
        print.flush();
        return text.toString();
    }
}
