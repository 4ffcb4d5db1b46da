package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
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
        List<List<TimedWord>> said =
                lines.stream().filter(line -> !line.isEmpty()).toList();
        List<List<TimedWord>> cues = new ArrayList<>();
        for (int i = 0; i < said.size(); i++) {
            Optional<StreamTime> next = i + 1 < said.size() ? Optional.of(begins(said.get(i + 1))) : Optional.empty();
            cues.addAll(breaker.captions(said.get(i), next));
        }
        List<Caption> captions = new ArrayList<>();
        Optional<StreamTime> next = Optional.empty();
        for (int i = cues.size() - 1; i >= 0; i--) {
            Caption caption = caption(cues.get(i), i == 0 ? List.of() : cues.get(i - 1), next);
            captions.add(caption);
            next = Optional.of(caption.start());
        }
        Collections.reverse(captions);
        return captions;
    }

    /** A caption stays as long as its reader needs, but disappears before the next one appears. */
    private Caption caption(List<TimedWord> words, List<TimedWord> before, Optional<StreamTime> next) {
        StreamTime said = begins(words);
        StreamTime spoken = words.get(words.size() - 1).end();
        StreamTime latest = StreamTime.min(spoken.plus(rules.linger()), said.plus(rules.longest()));
        StreamTime wanted = StreamTime.min(StreamTime.max(spoken, said.plus(breaker.needed(words))), latest);
        StreamTime end = wanted;
        if (next.isPresent()) {
            boolean hardlyAGap = next.get().since(wanted).compareTo(rules.gap()) < 0;
            end = hardlyAGap ? StreamTime.min(next.get(), latest) : wanted;
        }
        StreamTime start = start(words, before, end);
        StreamTime longest = start.plus(rules.longest());
        return new Caption(start, StreamTime.min(end, longest), breaker.rows(words));
    }

    /** If there is too little time to read it, a caption appears early, as far as the one before it can be read too. */
    private StreamTime start(List<TimedWord> words, List<TimedWord> before, StreamTime end) {
        StreamTime said = begins(words);
        StreamTime missing = breaker.needed(words).since(end.since(said));
        StreamTime earliest = said.since(StreamTime.min(rules.early(), missing));
        if (before.isEmpty()) {
            return earliest;
        }
        StreamTime read = begins(before).plus(breaker.needed(before));
        return StreamTime.min(said, StreamTime.max(earliest, read));
    }

    private static StreamTime begins(List<TimedWord> words) {
        return words.get(0).start();
    }
}
