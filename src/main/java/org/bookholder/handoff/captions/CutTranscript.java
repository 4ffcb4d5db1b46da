package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.cutlist.Clip;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.handoff.HandOff;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.timing.StreamTime;

/** The words of the chosen attempts, as written, with their times in the cut lesson. */
final class CutTranscript {
    private CutTranscript() {}

    static List<List<TimedWord>> of(HandOff handOff) {
        List<List<TimedWord>> lines = new ArrayList<>();
        for (Clip clip : handOff.cut().clips()) {
            for (Attempt attempt : clip.attempts()) {
                List<ScriptWord> words = handOff.state().line(attempt.line()).words();
                lines.add(spread(words, attempt).stream()
                        .map(word -> new TimedWord(
                                word.text(),
                                handOff.timeline().when(clip, word.start()),
                                handOff.timeline().when(clip, word.end())))
                        .toList());
            }
        }
        return lines;
    }

    /** Every word of a line with a time: words that were not heard share the time between those that were. */
    static List<TimedWord> spread(List<ScriptWord> words, Attempt attempt) {
        List<TimedWord> timed = new ArrayList<>();
        int done = 0;
        StreamTime at = attempt.start();
        for (WordTime heard : attempt.words()) {
            if (heard.word() <= done
                    || heard.word() > words.size()
                    || heard.start().isBefore(at)) {
                continue;
            }
            share(timed, words.subList(done, heard.word() - 1), at, heard.start());
            timed.add(new TimedWord(words.get(heard.word() - 1).written(), heard.start(), heard.end()));
            done = heard.word();
            at = heard.end();
        }
        share(timed, words.subList(done, words.size()), at, StreamTime.max(at, attempt.end()));
        return timed;
    }

    private static void share(List<TimedWord> timed, List<ScriptWord> words, StreamTime from, StreamTime to) {
        long each = words.isEmpty() ? 0 : to.since(from).ticks() / words.size();
        for (int i = 0; i < words.size(); i++) {
            StreamTime start = from.plus(new StreamTime(i * each));
            timed.add(new TimedWord(words.get(i).written(), start, start.plus(new StreamTime(each))));
        }
    }
}
