package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.timing.StreamTime;

/** Makes captions from timed lines, broken between phrases and shown long enough to be read. */
final class CaptionWriter {
    private final CaptionRules rules;
    private final CaptionBreaker breaker;

    CaptionWriter(CaptionRules rules) {
        this.rules = rules;
        this.breaker = new CaptionBreaker(rules);
    }

    /**
     * The captions of a lesson.
     *
     * @param lines the words of each line, in order of time; a caption never holds words of two lines
     */
    List<Caption> write(List<List<TimedWord>> lines) {
        List<List<TimedWord>> cues = new ArrayList<>();
        lines.stream().filter(line -> !line.isEmpty()).forEach(line -> cues.addAll(breaker.captions(line)));
        List<Caption> captions = new ArrayList<>();
        for (int i = 0; i < cues.size(); i++) {
            List<TimedWord> words = cues.get(i);
            StreamTime start = words.get(0).start();
            captions.add(new Caption(
                    start, end(words, i + 1 < cues.size() ? cues.get(i + 1) : List.of()), breaker.rows(words)));
        }
        return captions;
    }

    /** A caption stays as long as its reader needs, but disappears before the next one appears. */
    private StreamTime end(List<TimedWord> words, List<TimedWord> next) {
        StreamTime start = words.get(0).start();
        StreamTime spoken = words.get(words.size() - 1).end();
        StreamTime latest = spoken.plus(rules.linger());
        StreamTime wanted = StreamTime.min(StreamTime.max(spoken, start.plus(needed(words))), latest);
        if (next.isEmpty()) {
            return wanted;
        }
        StreamTime comes = next.get(0).start();
        boolean hardlyAGap = comes.since(wanted).compareTo(rules.gap()) < 0;
        return hardlyAGap ? StreamTime.min(comes, latest) : wanted;
    }

    private StreamTime needed(List<TimedWord> words) {
        int characters = String.join(" ", breaker.rows(words)).length();
        long byWords = words.size() * rules.perWord().ticks();
        long byCharacters = (long) characters * StreamTime.TICKS_PER_SECOND / rules.perSecond();
        return new StreamTime(Math.max(rules.shortest().ticks(), Math.max(byWords, byCharacters)));
    }
}
