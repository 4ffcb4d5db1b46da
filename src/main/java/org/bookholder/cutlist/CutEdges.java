package org.bookholder.cutlist;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/** Where a run of attempts that are used begins and ends: in the quiet around it, or where someone has set it. */
final class CutEdges {
    /** If no silence is known, the cut is searched for within this distance of the word's time. */
    private static final StreamTime NEAR = StreamTime.ofSeconds(0.04);

    /** A pause that someone has set comes no nearer than this to what else is said around it: its times are not exact. */
    private static final StreamTime GUARD = StreamTime.ofSeconds(0.1);

    /** At least so much of an attempt stays, wherever someone sets its ends: with nothing left, the line would count as never read. */
    private static final StreamTime LEAST = StreamTime.ofSeconds(0.05);

    /** The share of a pause that belongs to the line after it, which keeps its breath. */
    private static final double LEAD = 0.6;

    private final SessionState state;
    private final CutRules rules;
    private final SpeechEdges edges;
    private final Map<Integer, TakeSpeech> takes = new HashMap<>();

    CutEdges(SessionState state, CutRules rules, TakeSound sound) {
        this.state = state;
        this.rules = rules;
        this.edges = new SpeechEdges(sound);
        state.takes().all().forEach(take -> takes.put(take.number(), TakeSpeech.of(state, take)));
    }

    /** Where a run begins. */
    record Edge(StreamTime cut, StreamTime quiet) {}

    /** The quiet between two attempts that are used one after the other, on the side of each. */
    private record Quiet(StreamTime tail, StreamTime lead) {
        static Quiet share(StreamTime pause, StreamTime afterFirst, StreamTime beforeThen) {
            StreamTime lead = StreamTime.min(new StreamTime(Math.round(LEAD * pause.ticks())), beforeThen);
            StreamTime tail = StreamTime.min(pause.since(lead), afterFirst);
            return new Quiet(tail, StreamTime.min(pause.since(tail), beforeThen));
        }
    }

    /** Whether the second was read right after the first, with only a pause in between, and nobody wants a join there. */
    boolean inOneGo(Attempt first, Attempt then) throws ProblemException {
        if (!follows(first, then) || then.start().since(first.end()).compareTo(rules.longestPause()) > 0) {
            return false;
        }
        FilmChoices after = film(then);
        Optional<StreamTime> pause = after.pauseBefore();
        return film(first).outOf(first).isEmpty()
                && after.inOf(then).isEmpty()
                && after.framing() == FilmChoices.Framing.PLANNED
                && after.camera().isEmpty()
                && (pause.isEmpty() || onset(then).since(offset(first)).compareTo(pause.get()) <= 0);
    }

    /** Whether the second was read after the first, with only a pause in between. */
    private boolean follows(Attempt first, Attempt then) {
        return first.take() == then.take()
                && first.start().isBefore(then.start())
                && !speech(first).interrupted(first, then)
                && !state.takes().heldWithin(first.end(), then.start());
    }

    /** Where a run begins; {@code before} is what is used just before it. */
    Edge in(Attempt first, Optional<Attempt> before) throws ProblemException {
        StreamTime quietFrom = quietBefore(first);
        Optional<StreamTime> set = film(first).inOf(first);
        if (set.isPresent()) {
            return new Edge(StreamTime.min(within(first, set.get()), first.end().since(LEAST)), quietFrom);
        }
        StreamTime onset = edges.onset(first.take(), first.start(), quietFrom);
        StreamTime quiet = onset.since(quietFrom);
        if (quiet.ticks() == 0) {
            return new Edge(edges.quietest(first.take(), onset.since(NEAR), onset.plus(NEAR)), quietFrom);
        }
        Optional<Quiet> wanted = before.isPresent() ? between(before.get(), first) : Optional.empty();
        // Where two lines are close together, each gets half of the silence.
        StreamTime lead = wanted.map(Quiet::lead).orElse(StreamTime.min(rules.lead(), half(quiet)));
        StreamTime cut = edges.quietAfter(first.take(), onset.since(lead), onset);
        Optional<StreamTime> end = before.filter(b -> follows(b, first)).flatMap(b -> film(b).outOf(b));
        // Nothing is heard twice, wherever the line before it was cut.
        return new Edge(end.map(e -> StreamTime.max(cut, e)).orElse(cut), quietFrom);
    }

    /** Where a run ends; {@code after} is what is used just after it. */
    Edge out(Attempt last, Optional<Attempt> after) throws ProblemException {
        StreamTime quietTo = speech(last).quietAfter(last);
        Optional<StreamTime> set = film(last).outOf(last);
        if (set.isPresent()) {
            return new Edge(StreamTime.max(within(last, set.get()), last.start().plus(LEAST)), quietTo);
        }
        StreamTime offset = edges.offset(last.take(), last.end(), quietTo);
        StreamTime quiet = quietTo.since(offset);
        if (quiet.ticks() == 0) {
            return new Edge(edges.quietest(last.take(), offset.since(NEAR), offset.plus(NEAR)), quietTo);
        }
        Optional<Quiet> wanted = after.isPresent() ? between(last, after.get()) : Optional.empty();
        StreamTime tail = wanted.map(Quiet::tail).orElse(StreamTime.min(rules.tail(), half(quiet)));
        StreamTime cut = offset.plus(tail);
        Optional<StreamTime> begin = after.filter(a -> follows(last, a)).flatMap(a -> film(a).inOf(a));
        return new Edge(begin.map(b -> StreamTime.min(cut, b)).orElse(cut), quietTo);
    }

    /** The quiet between two attempts if it is not as the rules say: someone has set it, or wants another framing there. */
    private Optional<Quiet> between(Attempt first, Attempt then) throws ProblemException {
        FilmChoices choices = film(then);
        Optional<StreamTime> pause = choices.pauseBefore();
        boolean follow = follows(first, then);
        if (follow) {
            StreamTime all = onset(then).since(offset(first));
            boolean goesOn = all.compareTo(rules.longestPause()) <= 0;
            return pause.map(length -> StreamTime.min(length, all))
                    // A framing alone takes nothing of the pause away.
                    .or(() -> goesOn ? Optional.of(all) : Optional.empty())
                    .map(length -> Quiet.share(length, all, all));
        }
        if (pause.isEmpty()) {
            return Optional.empty();
        }
        StreamTime afterFirst = speech(first).quietAfter(first).since(offset(first));
        StreamTime beforeThen = onset(then).since(quietBefore(then));
        return Optional.of(Quiet.share(pause.get(), usable(afterFirst), usable(beforeThen)));
    }

    private static StreamTime usable(StreamTime quiet) {
        return StreamTime.max(half(quiet), quiet.since(StreamTime.min(GUARD, quiet)));
    }

    private StreamTime onset(Attempt attempt) throws ProblemException {
        return edges.onset(attempt.take(), attempt.start(), quietBefore(attempt));
    }

    private StreamTime offset(Attempt attempt) throws ProblemException {
        return edges.offset(attempt.take(), attempt.end(), speech(attempt).quietAfter(attempt));
    }

    private StreamTime quietBefore(Attempt first) throws ProblemException {
        StreamTime quietFrom = speech(first).quietBefore(first);
        return speech(first).brokenOffBefore(first)
                ? edges.silenceBefore(first.take(), first.start(), quietFrom)
                : quietFrom;
    }

    private StreamTime within(Attempt attempt, StreamTime place) {
        Take take = state.takes().number(attempt.take()).orElseThrow();
        return StreamTime.max(take.start(), StreamTime.min(place, take.end()));
    }

    private FilmChoices film(Attempt attempt) {
        return state.remarks().film(attempt.line());
    }

    private static StreamTime half(StreamTime length) {
        return new StreamTime(length.ticks() / 2);
    }

    private TakeSpeech speech(Attempt attempt) {
        TakeSpeech speech = takes.get(attempt.take());
        if (speech == null) {
            throw new IllegalArgumentException("attempt (" + attempt + ") must be of a take of the session");
        }
        return speech;
    }
}
