package org.bookholder.follow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.graph.PathCosts;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.graph.ViterbiTracker;
import org.bookholder.follow.judge.ReaderProfile;
import org.bookholder.follow.live.LivePath;
import org.bookholder.follow.live.OpenEarOpinion;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.settle.GuardedSettler;
import org.bookholder.follow.settle.Settler;
import org.bookholder.follow.settle.TakeSettler;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Follows a reading of a script: turns what the ears report into the reading position and the outcome of each line.
 *
 * <p>There are two paths: the live path shows the position, using the script ear's partial hypotheses; the settling
 * path decides afterwards what was read, using the final words of both ears. Confined to one thread; uses no clock.
 * Evidence from the two ears may be interleaved in any way; the result at the end of a take does not depend on it.
 */
public final class Follower {
    /** How many tokens in a row must be off script before they count as an aside. */
    private static final int TOKENS_OF_AN_ASIDE = 2;

    /** How many tokens in a row must be off script before the position counts as lost. */
    private static final int TOKENS_WHEN_LOST = 30;

    /** By how much a reader must be understood better, before it is said that the ears understand again. */
    private static final double CLEARLY_BETTER = 0.05;

    private final ReadingGraph graph;
    private final ViterbiTracker tracker;
    private final UnaryOperator<Settler> settlers;
    private final ReaderProfile reader = new ReaderProfile();
    private Loudness loudness;
    private OpenEarOpinion echo;
    private LivePath live;
    private GuardedSettler settler;
    private FollowState state = FollowState.FOLLOWING;
    private boolean held;
    private boolean speaking;
    private boolean badly;

    /** Creates a follower that has heard nothing yet, as if a take were running from the script's start. */
    public Follower(PreparedScript script) {
        this(script, UnaryOperator.identity());
    }

    /** The same, but lets {@code settlers} replace the usual settlers. */
    public Follower(PreparedScript script, UnaryOperator<Settler> settlers) {
        this.settlers = settlers;
        graph = new ReadingGraph(script);
        tracker = new ViterbiTracker(graph, PathCosts.standard());
        loudness = new Loudness(StreamTime.ZERO);
        echo = new OpenEarOpinion();
        live = new LivePath(graph, tracker, loudness, echo, 0);
        settler = settler(1, loudness, StreamTime.ZERO, 0);
    }

    private GuardedSettler settler(int take, Loudness loud, StreamTime at, int word) {
        return new GuardedSettler(
                graph,
                take,
                loud,
                at,
                word,
                (start, from) -> settlers.apply(new TakeSettler(graph, tracker, reader, take, loud, start, from)));
    }

    /** Begins a take that will be read from {@code from}; {@code at} is the time at which its audio begins. */
    public List<FollowEvent> startTake(int take, StreamTime at, ReadingPosition from) {
        int word = word(from);
        loudness = new Loudness(at);
        echo = new OpenEarOpinion();
        live = new LivePath(graph, tracker, loudness, echo, word);
        settler = settler(take, loudness, at, word);
        state = FollowState.FOLLOWING;
        held = false;
        speaking = false;
        return List.of(new FollowEvent.Moved(at, position(word), 0));
    }

    /** Takes in the sound levels of the take; call it before {@code hear} for hypotheses about the same sound. */
    public List<FollowEvent> hear(FrameLevels levels) {
        loudness.add(levels);
        List<FollowEvent> events = new ArrayList<>();
        if (!held) {
            int before = live.shown();
            live.listen();
            events.addAll(shown(levels.end(), before));
        }
        if (!speaking || held) {
            events.addAll(settler.quiet(levels.end(), live.shown()));
        }
        return events;
    }

    /** Takes in what an ear reports. */
    public List<FollowEvent> hear(Hypothesis hypothesis) {
        if (hypothesis.ear() == EarKind.SCRIPT) {
            speaking = !(hypothesis instanceof Hypothesis.Final words)
                    || !words.next().isEmpty();
        }
        if (hypothesis instanceof Hypothesis.Final words) {
            return settle(words);
        }
        if (hypothesis instanceof Hypothesis.Partial partial) {
            if (partial.ear() == EarKind.OPEN) {
                echo.partial(partial.words(), partial.heardTo());
            } else if (!held) {
                int before = live.shown();
                live.partial(partial.words(), partial.heardTo());
                return shown(partial.heardTo(), before);
            }
        }
        return List.of();
    }

    private List<FollowEvent> settle(Hypothesis.Final words) {
        int before = live.shown();
        List<FollowEvent> events = new ArrayList<>();
        if (words.ear() == EarKind.OPEN) {
            echo.settle(words.words().stream().map(RecognizedWord::text).toList(), words.next(), words.heardTo());
        }
        List<FollowEvent> settled = settler.hear(words, before);
        if (words.ear() == EarKind.SCRIPT && !held) {
            live.settle(settler.beam(), words.next(), words.heardTo());
            events.addAll(shown(words.heardTo(), before));
        }
        events.addAll(settled);
        understood(words.heardTo()).ifPresent(events::add);
        return events;
    }

    /** Tells when this reader turns out to be understood badly, and when that no longer holds. */
    private Optional<FollowEvent> understood(StreamTime at) {
        OptionalDouble share = reader.understood();
        if (share.isEmpty() || share.getAsDouble() < ReaderProfile.BADLY + (badly ? CLEARLY_BETTER : 0) == badly) {
            return Optional.empty();
        }
        badly = !badly;
        return Optional.of(new FollowEvent.Understood(at, badly, share.getAsDouble()));
    }

    private List<FollowEvent> shown(StreamTime at, int before) {
        List<FollowEvent> events = new ArrayList<>();
        int now = live.shown();
        if (now != before) {
            settler.shown(before, now, live.readOn());
            events.add(new FollowEvent.Moved(at, position(now), live.readOn() ? spokenWords(before, now) : 0));
        }
        changed(at).ifPresent(events::add);
        return events;
    }

    private Optional<FollowEvent> changed(StreamTime at) {
        int off = live.tokensOff();
        FollowState next = off < TOKENS_OF_AN_ASIDE
                ? FollowState.FOLLOWING
                : off < TOKENS_WHEN_LOST ? FollowState.ASIDE : FollowState.LOST;
        if (next == state) {
            return Optional.empty();
        }
        state = next;
        return Optional.of(new FollowEvent.Changed(at, next));
    }

    /** Moves the reading position by hand; the voice takes over again once it is heard there or elsewhere. */
    public List<FollowEvent> move(StreamTime at, ReadingPosition to) {
        int word = word(to);
        live.move(word);
        List<FollowEvent> events = new ArrayList<>();
        events.add(new FollowEvent.Moved(at, position(word), 0));
        events.addAll(settler.move(at, word));
        return events;
    }

    /** Stops following until {@link #resume}: anything said in between counts neither as reading nor as an aside. */
    public List<FollowEvent> hold(StreamTime at) {
        held = true;
        return settler.hold(at, live.shown());
    }

    /** Starts following again. */
    public List<FollowEvent> resume(StreamTime at) {
        held = false;
        return settler.resume(at, live.shown());
    }

    /** Decides the outcome of the whole take; call it when both ears have finished. */
    public List<FollowEvent> endTake(StreamTime at) {
        List<FollowEvent> events = new ArrayList<>(settler.finish(at));
        understood(at).ifPresent(events::add);
        return events;
    }

    private int spokenWords(int from, int to) {
        int count = 0;
        for (int word = from; word < to; word++) {
            count += graph.word(word).word().spoken().get(0).size();
        }
        return count;
    }

    private ReadingPosition position(int word) {
        int line = graph.line(word);
        return new ReadingPosition(line + 1, word - graph.firstWord(line) + 1);
    }

    private int word(ReadingPosition position) {
        int line = Math.min(position.line() - 1, graph.lines());
        if (line == graph.lines()) {
            return graph.words();
        }
        return Math.min(graph.firstWord(line) + position.word() - 1, graph.firstWord(line + 1) - 1);
    }
}
