package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.follow.evidence.OpenWords;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** Finds speech that is not in the script: anything that either ear heard of the reader outside the attempts. */
final class AsideFinder {
    private static final StreamTime APART = StreamTime.ofSeconds(1.0);
    private static final StreamTime SHORTEST = StreamTime.ofSeconds(0.7);
    private static final int FEWEST_WORDS = 2;

    private final OpenWords open;
    private final ReaderLevel reader;

    /** @param reader how loud the reader is, by the attempts of the take so far */
    AsideFinder(OpenWords open, ReaderLevel reader) {
        this.open = open;
        this.reader = reader;
    }

    /**
     * Finds the asides of a take.
     *
     * @param spans all spans of the take, in order of time
     * @param attempts the attempts derived from them, in order of time
     */
    List<Aside> find(List<PathSpan> spans, List<Attempt> attempts, int take) {
        List<RecognizedWord> off = spans.stream()
                .filter(PathSpan::off)
                .flatMap(span -> span.heard().stream())
                .toList();
        List<Aside> asides = new ArrayList<>();
        StreamTime from = StreamTime.ZERO;
        int line = 0;
        for (Attempt attempt : attempts) {
            between(asides, off, from, attempt.start(), take, line);
            from = attempt.end();
            line = attempt.line();
        }
        between(asides, off, from, new StreamTime(Long.MAX_VALUE / 2), take, line);
        return asides;
    }

    /**
     * Finds the asides of a stretch without an attempt.
     *
     * @param off the words in it that the script ear heard off the script
     * @param line the line that was read before it; 0 if none was
     */
    List<Aside> within(List<RecognizedWord> off, StreamTime from, StreamTime to, int take, int line) {
        List<Aside> asides = new ArrayList<>();
        between(asides, off, from, to, take, line);
        return asides;
    }

    private void between(
            List<Aside> asides, List<RecognizedWord> off, StreamTime from, StreamTime to, int take, int line) {
        List<RecognizedWord> said = open.between(from, to);
        List<RecognizedWord> all = Stream.concat(off.stream(), said.stream())
                .filter(w -> within(w, from, to))
                .sorted((a, b) -> a.start().compareTo(b.start()))
                .toList();
        int begin = 0;
        for (int i = 1; i <= all.size(); i++) {
            if (i == all.size()
                    || all.get(i).start().since(all.get(i - 1).end()).compareTo(APART) > 0) {
                addIfLong(asides, all.subList(begin, i), said, take, line);
                begin = i;
            }
        }
    }

    private static boolean within(RecognizedWord word, StreamTime from, StreamTime to) {
        long middle = (word.start().ticks() + word.end().ticks()) / 2;
        return middle >= from.ticks() && middle <= to.ticks();
    }

    private void addIfLong(
            List<Aside> asides, List<RecognizedWord> group, List<RecognizedWord> heard, int take, int line) {
        StreamTime start = group.get(0).start();
        StreamTime end = group.stream().map(RecognizedWord::end).reduce(start, StreamTime::max);
        List<RecognizedWord> said = heard.stream()
                .filter(w -> !w.start().isBefore(start) && !end.isBefore(w.end()))
                .toList();
        if (said.size() >= FEWEST_WORDS && end.since(start).compareTo(SHORTEST) >= 0 && !reader.isFar(start, end)) {
            String text = said.stream().map(RecognizedWord::text).collect(Collectors.joining(" "));
            asides.add(new Aside(take, start, end, text, line));
        }
    }
}
