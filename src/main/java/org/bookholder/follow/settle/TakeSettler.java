package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.evidence.OpenWords;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.graph.ViterbiTracker;
import org.bookholder.follow.judge.AttemptJudge;
import org.bookholder.follow.judge.ReaderProfile;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Settles a take or a part of it: collects spans as they are completed, judges attempts once both ears have heard them,
 * and judges everything again at the end.
 */
public final class TakeSettler implements Settler {
    /**
     * A reader who has said nothing for so long may have broken off the line. Shorter pauses within a line are common, and
     * what follows them soon settles it.
     */
    private static final StreamTime BROKEN_OFF = StreamTime.ofSeconds(3);

    private final ReadingGraph graph;
    private final int take;
    private final SettlingPath path;
    private final SpanBuilder builder;
    private final WordOrder scriptEar;
    private final WordOrder openEar;
    private final OpenWords open = new OpenWords();
    private final ReaderProfile reader;
    private final AttemptJudge judge;
    private final Loudness loudness;
    private final LiveAsides asides;
    private final List<PathSpan> spans = new ArrayList<>();
    private final List<Held> holds = new ArrayList<>();
    private final Map<Integer, Attempt> told = new HashMap<>();
    private int judged;
    private int ordinal;

    /** Whether nothing was heard since unfinished readings were judged. */
    private boolean quietJudged;

    private record Held(StreamTime from, StreamTime to) {}

    /**
     * @param reader what this session has taught about the reader; learns from this take
     * @param start when the take's audio begins
     * @param word the script word from which it will be read
     */
    public TakeSettler(
            ReadingGraph graph,
            ViterbiTracker tracker,
            ReaderProfile reader,
            int take,
            Loudness loudness,
            StreamTime start,
            int word) {
        this.graph = graph;
        this.reader = reader;
        this.take = take;
        this.loudness = loudness;
        scriptEar = new WordOrder(start);
        openEar = new WordOrder(start);
        path = new SettlingPath(tracker, word, start);
        builder = new SpanBuilder(graph);
        judge = new AttemptJudge(graph, open, loudness, reader);
        asides = new LiveAsides(graph, loudness, open, take, start);
    }

    @Override
    public Beam beam() {
        return path.beam();
    }

    /** Takes in final words of either ear and returns the attempts that could be judged. */
    @Override
    public List<Attempt> hear(Hypothesis.Final words) {
        WordOrder order = words.ear() == EarKind.OPEN ? openEar : scriptEar;
        List<RecognizedWord> counted =
                order.of(words).stream().filter(w -> !held(w)).toList();
        if (words.ear() == EarKind.OPEN) {
            open.add(counted, words.end());
        } else {
            spans.addAll(builder.add(path.hear(counted)));
        }
        quietJudged = false;
        return judge(false);
    }

    @Override
    public List<Attempt> quiet(StreamTime to) {
        if (quietJudged || to.since(path.lastEnd()).isBefore(BROKEN_OFF)) {
            return List.of();
        }
        quietJudged = true;
        return judge(true);
    }

    /** Judges what can be judged, {@code unfinished} readings too or not; returns the attempts that are new or have changed. */
    private List<Attempt> judge(boolean unfinished) {
        List<Attempt> attempts = judgeHeard();
        attempts.addAll(judgeAhead(unfinished));
        asides.since(judged < spans.size() ? Optional.empty() : builder.offAhead(path.ahead(), unfinished));
        attempts.removeIf(a -> a.equals(told.put(a.ordinal(), a)));
        return attempts;
    }

    /** Judges the spans that the open ear has heard completely. */
    private List<Attempt> judgeHeard() {
        List<Attempt> attempts = new ArrayList<>();
        while (judged < spans.size() && heardByBoth(spans.get(judged))) {
            if (spans.get(judged).off()) {
                asides.off(spans.get(judged));
            } else {
                Attempt attempt = judge(spans, judged, ++ordinal);
                attempts.add(attempt);
                asides.read(attempt);
            }
            judged++;
        }
        return attempts;
    }

    /**
     * Judges readings as they appear now, the last one only if it has reached the end of its line or is to be taken as broken
     * off. Later words may still belong to them, but during a pause none come for a long time. They get the ordinals that they
     * will keep, and are reported again if they change.
     */
    private List<Attempt> judgeAhead(boolean unfinished) {
        if (judged < spans.size()) {
            return List.of();
        }
        List<PathSpan> all = new ArrayList<>(spans.subList(lastReading(), judged));
        int from = all.size();
        all.addAll(builder.ahead(path.ahead(), unfinished));
        List<Attempt> attempts = new ArrayList<>();
        for (int i = from; i < all.size() && heardByBoth(all.get(i)); i++) {
            if (!all.get(i).off()) {
                attempts.add(judge(all, i, ordinal + attempts.size() + 1));
            }
        }
        return attempts;
    }

    /**
     * The index of the last span that was judged as a reading of a line; the next reading cannot begin before it ends.
     */
    private int lastReading() {
        int index = judged - 1;
        while (index > 0 && spans.get(index).off()) {
            index--;
        }
        return Math.max(0, index);
    }

    private boolean heardByBoth(PathSpan span) {
        return !open.heardTo().isBefore(span.end());
    }

    private Attempt judge(List<PathSpan> all, int index, int number) {
        return judge.judge(all.get(index), take, number, endOfReading(all, index - 1), startOfReading(all, index + 1));
    }

    /** When the last reading of a line ends, up to a given span. */
    private static StreamTime endOfReading(List<PathSpan> all, int index) {
        for (int i = index; i >= 0; i--) {
            if (!all.get(i).off()) {
                return all.get(i).end();
            }
        }
        return StreamTime.ZERO;
    }

    /** When the first reading of a line begins, from a given span on. */
    private StreamTime startOfReading(List<PathSpan> all, int index) {
        for (int i = index; i < all.size(); i++) {
            if (!all.get(i).off()) {
                return all.get(i).start();
            }
        }
        return loudness.heardTo();
    }

    @Override
    public List<Aside> asides() {
        return asides.all();
    }

    @Override
    public void move(int word) {
        path.move(word);
    }

    @Override
    public void hold(StreamTime at) {
        holds.add(new Held(at, new StreamTime(Long.MAX_VALUE / 2)));
    }

    @Override
    public void resume(StreamTime at) {
        if (!holds.isEmpty()) {
            Held last = holds.remove(holds.size() - 1);
            holds.add(new Held(last.from(), at));
        }
    }

    private boolean held(RecognizedWord word) {
        return holds.stream()
                .anyMatch(
                        h -> word.end().compareTo(h.from()) > 0 && word.start().isBefore(h.to()));
    }

    /** Settles the whole take. */
    @Override
    public FollowEvent.TakeSettled finish(StreamTime at) {
        spans.addAll(builder.add(path.finish()));
        spans.addAll(builder.finish());
        // First learn the reader's profile afresh from the final readings, then judge each reading by it: until now the
        // profile depended on the order in which the ears reported.
        reader.forget(take);
        judgeAll();
        List<Attempt> attempts = judgeAll();
        ReaderLevel level = new ReaderLevel(loudness);
        attempts.forEach(level::add);
        List<Aside> found = new AsideFinder(open, level).find(spans, attempts, take);
        FalseStarts.Told told = new FalseStarts(graph, loudness).tell(attempts, found);
        return new FollowEvent.TakeSettled(at, take, told.attempts(), told.asides());
    }

    private List<Attempt> judgeAll() {
        List<Attempt> attempts = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            if (!spans.get(i).off()) {
                attempts.add(judge(spans, i, attempts.size() + 1));
            }
        }
        return attempts;
    }
}
