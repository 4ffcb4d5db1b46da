package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * Decides which attempt of each line is used and where it is cut.
 *
 * <p>It uses the last clean attempt of each line. Lines that were read one after another stay in one clip, so that
 * there are as few cuts as possible; a line without a usable attempt leaves a gap with a marker. Cuts lie in the
 * silence before or after what is used, never within a word.
 */
public final class CutPlanner {
    private final SessionState state;
    private final CutRules rules;
    private final IntPredicate wanted;
    private final SpeechEdges edges;
    private final Map<Integer, TakeSpeech> takes = new HashMap<>();
    private final MarkerPlan markers;
    private final LikelyLength lengths;

    private CutPlanner(SessionState state, CutRules rules, TakeSound sound, IntPredicate wanted) {
        this.state = state;
        this.rules = rules;
        this.wanted = wanted;
        this.edges = new SpeechEdges(sound);
        this.markers = new MarkerPlan(state);
        this.lengths = new LikelyLength(state, rules);
        state.takes().all().forEach(take -> takes.put(take.number(), TakeSpeech.of(state, take)));
    }

    /**
     * Plans the cut of a session; of one that is still running, as far as it has been read.
     *
     * @param sound the takes' recordings, to find the silences
     * @throws ProblemException if a recording cannot be read
     */
    public static CutList plan(SessionState state, CutRules rules, TakeSound sound) throws ProblemException {
        return plan(state, rules, sound, line -> true);
    }

    /** The same of some lines only: the others leave neither clip nor gap. */
    public static CutList plan(SessionState state, CutRules rules, TakeSound sound, IntPredicate wanted)
            throws ProblemException {
        return new CutPlanner(state, rules, sound, wanted).plan();
    }

    /** The attempt of a line that is used, if there is one. */
    public static Optional<Attempt> chosen(LineNotes line, CutRules rules) {
        return line.best().filter(best -> rules.useMisread() || line.kept() || best.outcome() == Outcome.CLEAN);
    }

    private CutList plan() throws ProblemException {
        List<CutItem> items = new ArrayList<>();
        List<Attempt> run = new ArrayList<>();
        for (LineNotes line : state.lines().all()) {
            boolean counts = wanted.test(line.line());
            Optional<Attempt> use = counts ? chosen(line, rules) : Optional.empty();
            if (!run.isEmpty() && (use.isEmpty() || !inOneGo(run.get(run.size() - 1), use.get()))) {
                items.add(clip(run));
                run.clear();
            }
            if (use.isPresent()) {
                run.add(use.get());
            } else if (counts) {
                items.add(gap(line));
            }
        }
        if (!run.isEmpty()) {
            items.add(clip(run));
        }
        return new CutList(items);
    }

    /** Whether the second was read right after the first, with only a pause in between. */
    private boolean inOneGo(Attempt first, Attempt then) {
        boolean next = first.take() == then.take() && first.start().isBefore(then.start());
        return next
                && then.start().since(first.end()).compareTo(rules.longestPause()) <= 0
                && !speech(first).interrupted(first, then)
                && !state.takes().heldWithin(first.end(), then.start());
    }

    private Clip clip(List<Attempt> run) throws ProblemException {
        Attempt first = run.get(0);
        Attempt last = run.get(run.size() - 1);
        StreamTime quietFrom = quietBefore(first);
        StreamTime quietTo = speech(last).quietAfter(last);
        StreamTime in = cutIn(first, quietFrom);
        StreamTime out = StreamTime.max(cutOut(last, quietTo), in.plus(new StreamTime(1)));
        return new Clip(
                first.take(),
                in,
                out,
                StreamTime.min(quietFrom, in),
                StreamTime.max(quietTo, out),
                run,
                markers.of(run, in, out));
    }

    private StreamTime quietBefore(Attempt first) throws ProblemException {
        StreamTime quietFrom = speech(first).quietBefore(first);
        return speech(first).brokenOffBefore(first)
                ? edges.silenceBefore(first.take(), first.start(), quietFrom)
                : quietFrom;
    }

    private StreamTime cutIn(Attempt first, StreamTime quietFrom) throws ProblemException {
        StreamTime onset = edges.onset(first.take(), first.start(), quietFrom);
        StreamTime quiet = onset.since(quietFrom);
        if (quiet.ticks() == 0) {
            return edges.quietest(first.take(), onset.since(NEAR), onset.plus(NEAR));
        }
        // Where two lines are close together, each gets half of the silence.
        return onset.since(StreamTime.min(rules.lead(), half(quiet)));
    }

    private StreamTime cutOut(Attempt last, StreamTime quietTo) throws ProblemException {
        StreamTime offset = edges.offset(last.take(), last.end(), quietTo);
        StreamTime quiet = quietTo.since(offset);
        if (quiet.ticks() == 0) {
            return edges.quietest(last.take(), offset.since(NEAR), offset.plus(NEAR));
        }
        return offset.plus(StreamTime.min(rules.tail(), half(quiet)));
    }

    /** If no silence is known, the cut is searched for within this distance of the word's time. */
    private static final StreamTime NEAR = StreamTime.ofSeconds(0.04);

    private static StreamTime half(StreamTime length) {
        return new StreamTime(length.ticks() / 2);
    }

    private Gap gap(LineNotes line) {
        StreamTime length = lengths.of(line);
        return new Gap(line.line(), length, markers.ofGap(line, length));
    }

    private TakeSpeech speech(Attempt attempt) {
        TakeSpeech speech = takes.get(attempt.take());
        if (speech == null) {
            throw new IllegalArgumentException("attempt (" + attempt + ") must be of a take of the session");
        }
        return speech;
    }
}
