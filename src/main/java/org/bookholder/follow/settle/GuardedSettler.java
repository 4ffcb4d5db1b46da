package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Settles a take even if a settler fails: the part not judged by then is reported as not judged, and a new settler
 * handles the rest of the take.
 */
public final class GuardedSettler {
    private final ReadingGraph graph;
    private final int take;
    private final Loudness loudness;
    private final Settler.Factory factory;
    private final List<Attempt> kept = new ArrayList<>();
    private final List<Aside> keptAsides = new ArrayList<>();
    private List<Aside> toldAsides = List.of();
    private final Map<Integer, Attempt> told = new TreeMap<>();
    private final SortedSet<Integer> linesRead = new TreeSet<>();
    private Settler settler;
    private SettlingLog log;
    private StreamTime start;
    private StreamTime latest;
    private int ordinals;
    private boolean held;
    private boolean restarted;

    /**
     * @param loudness sound levels of the take, for the log of a fault
     * @param start when the take's audio begins
     * @param word the script word from which it will be read
     */
    public GuardedSettler(
            ReadingGraph graph, int take, Loudness loudness, StreamTime start, int word, Settler.Factory factory) {
        this.graph = graph;
        this.take = take;
        this.loudness = loudness;
        this.factory = factory;
        this.start = start;
        this.latest = start;
        settler = factory.begin(start, word);
        log = new SettlingLog(take, start, word);
    }

    /** The explanations of where in the script the reader is. */
    public Beam beam() {
        return settler.beam();
    }

    /** Notes that the voice reached a word, by reading on from another one or by a jump. */
    public void shown(int before, int now, boolean readOn) {
        for (int word = readOn ? before : now - 1; word < now; word++) {
            if (word >= 0) {
                linesRead.add(graph.line(word) + 1);
            }
        }
    }

    /**
     * Takes in final words of either ear and returns the resulting events.
     *
     * @param shown the word that is shown, from which to continue if this fails
     */
    public List<FollowEvent> hear(Hypothesis.Final words, int shown) {
        latest = StreamTime.max(latest, words.end());
        log.heard(words);
        List<FollowEvent> events = new ArrayList<>();
        try {
            tell(settler.hear(sinceStart(words)), words.heardTo(), events);
        } catch (RuntimeException e) {
            events.add(failed(e, words.heardTo(), shown));
        }
        return events;
    }

    /**
     * Settles what the reader left unfinished, if the quiet has lasted long enough.
     *
     * @param to nothing was said from the last final words to this time
     * @param shown the word that is shown, from which to continue if this fails
     */
    public List<FollowEvent> quiet(StreamTime to, int shown) {
        List<FollowEvent> events = new ArrayList<>();
        try {
            tell(settler.quiet(to), to, events);
        } catch (RuntimeException e) {
            log.told("quiet", to.ticks());
            events.add(failed(e, to, shown));
        }
        return events;
    }

    private void tell(List<Attempt> attempts, StreamTime at, List<FollowEvent> events) {
        for (Attempt attempt : attempts) {
            Attempt numbered = attempt.withOrdinal(ordinals + attempt.ordinal());
            told.put(numbered.ordinal(), numbered);
            linesRead.remove(numbered.line());
            events.add(new FollowEvent.AttemptSettled(at, numbered));
        }
        List<Aside> asides = new ArrayList<>(keptAsides);
        asides.addAll(settler.asides());
        asides.sort(Comparator.comparing(Aside::start));
        if (!asides.equals(toldAsides)) {
            toldAsides = asides;
            events.add(new FollowEvent.AsidesHeard(at, take, asides));
        }
    }

    /** Only those words that were said in the part of the take that is being settled. */
    private Hypothesis.Final sinceStart(Hypothesis.Final words) {
        List<RecognizedWord> since =
                words.words().stream().filter(w -> start.isBefore(w.end())).toList();
        return new Hypothesis.Final(
                words.ear(), words.heardTo(), restarted ? since : words.words(), words.end(), words.next());
    }

    private FollowEvent failed(RuntimeException cause, StreamTime at, int shown) {
        Optional<Settler> next = begin(cause, shown);
        FollowEvent event = notJudged(cause, at);
        if (next.isEmpty()) {
            // The one that failed goes on: better judged late or wrongly in part than not at all.
            linesRead.clear();
            return event;
        }
        kept.addAll(told.values());
        keptAsides.clear();
        keptAsides.addAll(toldAsides);
        ordinals = told.keySet().stream().reduce(ordinals, Math::max);
        told.clear();
        linesRead.clear();
        restarted = true;
        start = latest;
        settler = next.get();
        log = new SettlingLog(take, start, shown);
        if (held) {
            log.told("hold", start.ticks());
        }
        return event;
    }

    /** A new settler in the state of the one that failed; empty if that fails too. */
    private Optional<Settler> begin(RuntimeException cause, int shown) {
        try {
            Settler next = factory.begin(latest, shown);
            if (held) {
                next.hold(latest);
            }
            return Optional.of(next);
        } catch (RuntimeException another) {
            cause.addSuppressed(another);
            return Optional.empty();
        }
    }

    private FollowEvent notJudged(RuntimeException cause, StreamTime at) {
        StreamTime from = told.values().stream().map(Attempt::end).reduce(start, StreamTime::max);
        UnjudgedStretch stretch = new UnjudgedStretch(take, from, StreamTime.max(from, latest), List.copyOf(linesRead));
        return new FollowEvent.NotJudged(at, stretch, log.text(cause, loudness));
    }

    /** Continues the reading at another word. */
    public List<FollowEvent> move(StreamTime at, int word) {
        log.told("move", word);
        try {
            settler.move(word);
            return List.of();
        } catch (RuntimeException e) {
            return List.of(failed(e, at, word));
        }
    }

    /**
     * Ignores speech from now on.
     *
     * @param shown the word that is shown, from which to continue if this fails
     */
    public List<FollowEvent> hold(StreamTime at, int shown) {
        held = true;
        log.told("hold", at.ticks());
        try {
            settler.hold(at);
            return List.of();
        } catch (RuntimeException e) {
            return List.of(failed(e, at, shown));
        }
    }

    /**
     * Stops ignoring speech.
     *
     * @param shown the word that is shown, from which to continue if this fails
     */
    public List<FollowEvent> resume(StreamTime at, int shown) {
        held = false;
        log.told("resume", at.ticks());
        try {
            settler.resume(at);
            return List.of();
        } catch (RuntimeException e) {
            return List.of(failed(e, at, shown));
        }
    }

    /** Settles the whole take; its final result is the last event. */
    public List<FollowEvent> finish(StreamTime at) {
        log.told("finish", at.ticks());
        List<FollowEvent> events = new ArrayList<>();
        List<Attempt> attempts = new ArrayList<>(kept);
        List<Aside> asides = new ArrayList<>(keptAsides);
        try {
            FollowEvent.TakeSettled rest = settler.finish(at);
            attempts.addAll(rest.attempts());
            asides.addAll(rest.asides());
        } catch (RuntimeException e) {
            events.add(notJudged(e, at));
            attempts.addAll(told.values());
        }
        asides.sort(Comparator.comparing(Aside::start));
        List<Attempt> numbered = new ArrayList<>();
        attempts.forEach(attempt -> numbered.add(attempt.withOrdinal(numbered.size() + 1)));
        events.add(new FollowEvent.TakeSettled(at, take, numbered, asides));
        return events;
    }
}
