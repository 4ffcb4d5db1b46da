package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.evidence.OpenWords;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * The asides of a running take as they end: those between two readings, and what was said since the last one. Each stretch is looked
 * at once, so that the cost of a word does not grow with the take. Confined to one thread.
 */
final class LiveAsides {
    /** The ears differ a little in where a word ends. */
    private static final StreamTime SLACK = StreamTime.ofSeconds(0.3);

    private final int take;
    private final OpenWords open;
    private final ReaderLevel reader;
    private final AsideFinder finder;
    private final FalseStarts falseStarts;
    private final List<Aside> before = new ArrayList<>();
    private final List<RecognizedWord> off = new ArrayList<>();
    private List<Aside> since = List.of();
    private StreamTime from;
    private int line;

    /**
     * Speech behind all readings.
     *
     * @param reading the last reading, if it has not been judged yet
     * @param heard the words that the script ear heard
     */
    record Tail(Optional<PathSpan> reading, List<RecognizedWord> heard) {}

    LiveAsides(ReadingGraph graph, Loudness loudness, OpenWords open, int take, StreamTime start) {
        this.take = take;
        this.open = open;
        this.from = start;
        reader = new ReaderLevel(loudness);
        finder = new AsideFinder(open, reader);
        falseStarts = new FalseStarts(graph, loudness);
    }

    /** Takes in speech off the script. */
    void off(PathSpan span) {
        off.addAll(span.heard());
    }

    /** Takes in the next reading of a line: what was said before it is known. */
    void read(Attempt attempt) {
        reader.add(attempt);
        List<Aside> found = finder.within(off, from, attempt.start(), take, line);
        before.addAll(falseStarts.tell(List.of(attempt), found).asides());
        from = StreamTime.max(from, attempt.end());
        line = attempt.line();
        off.clear();
        since = since.stream()
                .filter(aside -> !aside.start().isBefore(attempt.end()))
                .toList();
    }

    /** Takes in what was said since the last reading; empty if a line may still be read: what was known before it stays. */
    void since(Optional<Tail> tail) {
        tail.ifPresent(behind -> {
            List<Aside> known = new ArrayList<>();
            behind.reading()
                    .ifPresent(reading -> since.stream()
                            .filter(aside -> aside.end().isBefore(reading.start()))
                            .forEach(known::add));
            known.addAll(behind(behind));
            since = known;
        });
    }

    private List<Aside> behind(Tail tail) {
        List<RecognizedWord> all = new ArrayList<>(off);
        all.addAll(tail.heard());
        if (all.isEmpty() || open.heardTo().isBefore(all.get(all.size() - 1).end())) {
            return List.of();
        }
        StreamTime to = all.get(all.size() - 1).end().plus(SLACK);
        StreamTime end = tail.reading().map(PathSpan::end).orElse(from);
        return finder.within(
                all,
                StreamTime.max(from, end),
                to,
                take,
                tail.reading().map(span -> span.line() + 1).orElse(line));
    }

    /** All so far, in order of time. */
    List<Aside> all() {
        List<Aside> all = new ArrayList<>(before);
        all.addAll(since);
        return all;
    }
}
