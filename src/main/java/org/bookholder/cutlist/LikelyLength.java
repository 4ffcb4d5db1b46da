package org.bookholder.cutlist;

import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.pace.RunningTime;
import org.bookholder.pace.WordTally;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/** Estimates how long a line will take when it is recorded again. */
final class LikelyLength {
    /** Weight of the target pace, in words, against the pace measured so far. */
    private static final int PRIOR_WORDS = 20;

    /**
     * A misread attempt's length is limited to this factor above or below the estimate: outside that range, something
     * else was said in it, or much of the line is missing.
     */
    private static final int OFF = 2;

    private final SessionState state;
    private final CutRules rules;
    private final double pace;

    LikelyLength(SessionState state, CutRules rules) {
        this.state = state;
        this.rules = rules;
        this.pace = RunningTime.blend(read(state), state.script().settings().targetPace(), PRIOR_WORDS);
    }

    /**
     * The length of the misread attempt if there is one, within limits; otherwise the length of the line's words at the
     * pace of the other lines.
     */
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

    /** The words of the lines that were read clean, and the time they took. */
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
