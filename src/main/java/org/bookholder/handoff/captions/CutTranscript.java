package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.cutlist.Clip;
import org.bookholder.follow.model.Attempt;
import org.bookholder.handoff.HandOff;

/** What is said in the cut lesson, with its times there. */
final class CutTranscript {
    private CutTranscript() {}

    static List<SpokenLine> of(HandOff handOff) {
        List<SpokenLine> lines = new ArrayList<>();
        for (Clip clip : handOff.cut().clips()) {
            for (Attempt attempt : clip.attempts()) {
                List<TimedWord> words = SaidWords.of(
                                handOff.state().line(attempt.line()).words(), attempt)
                        .stream()
                        .map(word -> new TimedWord(
                                word.text(),
                                handOff.timeline().when(clip, word.start()),
                                handOff.timeline().when(clip, word.end())))
                        .toList();
                if (!words.isEmpty()) {
                    lines.add(new SpokenLine(attempt.line(), words));
                }
            }
        }
        return lines;
    }
}
