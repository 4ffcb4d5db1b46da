package org.bookholder.cutlist;

import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.pace.RunningTime;
import org.bookholder.pace.WordTally;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/** How long a line is likely to take when it is recorded again. */
final class LikelyLength {
    /** For so many words the target pace counts, until lines are read that tell more. */
    private static final int PRIOR_WORDS = 20;

    /** A misread attempt tells the length, unless it is off by more than this: then something else was in it, or half lost. */
    private static final int OFF = 2;

    private final SessionState state;
    private final CutRules rules;
    private final double pace;

    LikelyLength(SessionState state, CutRules rules) {
        this.state = state;
        this.rules = rules;
        this.pace = RunningTime.blend(read(state), state.script().settings().targetPace(), PRIOR_WORDS);
    }

    /** As long as the line took when it was misread, else as its words take as the other lines were read. */
    StreamTime of(LineNotes line) {
        StreamTime words = RunningTime.of(state.line(line.line()).spokenWords(), pace);
        StreamTime least = new StreamTime(words.ticks() / OFF);
        StreamTime most = new StreamTime(words.ticks() * OFF);
        StreamTime voice = line.best()
                .map(LikelyLength::length)
                .map(took -> StreamTime.max(least, StreamTime.min(took, most)))
                .orElse(words);
        return voice.plus(rules.lead()).plus(rules.tail());
    }

    /** The words of the lines that were read clean, and how long the voice took for them. */
    private static WordTally read(SessionState state) {
        WordTally read = WordTally.NONE;
        for (LineNotes line : state.lines().all()) {
            if (line.best().isPresent() && line.outcome() == Outcome.CLEAN) {
                read = read.plus(WordTally.of(
                        state.line(line.line()).spokenWords(),
                        length(line.best().get())));
            }
        }
        return read;
    }

    private static StreamTime length(Attempt attempt) {
        return attempt.end().since(attempt.start());
    }
}
