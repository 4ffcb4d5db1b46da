package org.bookholder.follow.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.PathStep.Kind;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** Cuts the settled path into readings of lines and speech that is not in the script. */
final class SpanBuilder {
    /** Restarting after fewer words than this is a stumble within one attempt, not a separate attempt. */
    private static final int WORDS_OF_AN_ATTEMPT = 2;

    /** After this many tokens in a row that are not in the script, the reading before them is over. */
    private static final int TOKENS_OF_AN_ASIDE = 5;

    private static final StreamTime PAUSE = StreamTime.ofSeconds(0.15);

    /** Matched words whose total surprise is less than this, in nats, do not count as a reading of a long line. */
    private static final double EVIDENCE = 14;

    /** Matched words that a reading of any line needs, if the line has that many. */
    private static final int FEWEST_WORDS = 2;

    /**
     * The same if it begins far inside the line, because speech that is not in the script often seems to match stray
     * words there.
     */
    private static final double EVIDENCE_INSIDE = 18;

    /** The same for the beginning of the line that is to be read next. */
    private static final double EVIDENCE_NEXT = 4;

    /** The same if the line is started again directly afterwards. */
    private static final double EVIDENCE_AGAIN = 1;

    /** The share of a short line's total surprise that its matched words must reach to count as a reading of it. */
    private static final double EVIDENCE_SHARE = 0.45;

    private final ReadingGraph graph;
    private final List<PathSpan> closed = new ArrayList<>();
    private final List<PathStep> reading = new ArrayList<>();
    private final List<PathStep> off = new ArrayList<>();
    private int lastLine = -1;
    private boolean again;

    SpanBuilder(ReadingGraph graph) {
        this.graph = graph;
    }

    /** Takes in steps and returns the spans that they complete. */
    List<PathSpan> add(List<PathStep> steps) {
        for (PathStep step : steps) {
            if (step.kind() == Kind.OFF) {
                off.add(step);
            } else if (step.heard() != null) {
                read(step);
            }
        }
        return drain();
    }

    /**
     * The spans that these further steps would complete, followed by the reading that would then be open, if it has
     * reached its line's last word or {@code unfinished} readings count too. Changes nothing.
     */
    List<PathSpan> ahead(List<PathStep> steps, boolean unfinished) {
        SpanBuilder copy = copy();
        List<PathSpan> spans = new ArrayList<>(copy.add(steps));
        if (unfinished || copy.atLineEnd()) {
            spans.addAll(copy.finish());
        }
        return spans;
    }

    /**
     * The speech that these further steps would leave behind all readings; empty if there is none or a line may still be read on,
     * unless {@code unfinished} readings are over. Changes nothing.
     */
    Optional<LiveAsides.Tail> offAhead(List<PathStep> steps, boolean unfinished) {
        SpanBuilder copy = copy();
        List<PathSpan> spans = copy.add(steps);
        boolean over =
                unfinished || copy.reading.isEmpty() || copy.off.size() >= TOKENS_OF_AN_ASIDE || copy.atLineEnd();
        if (!over || copy.off.isEmpty()) {
            return Optional.empty();
        }
        Optional<PathSpan> last = copy.reading.isEmpty()
                ? spans.stream().filter(span -> !span.off()).reduce((a, b) -> b)
                : Optional.of(new PathSpan(line(copy.lastWord()), copy.reading));
        List<RecognizedWord> heard = copy.off.stream().map(PathSpan::token).toList();
        return Optional.of(new LiveAsides.Tail(last, heard));
    }

    private SpanBuilder copy() {
        SpanBuilder copy = new SpanBuilder(graph);
        copy.reading.addAll(reading);
        copy.off.addAll(off);
        copy.lastLine = lastLine;
        return copy;
    }

    private boolean atLineEnd() {
        return !reading.isEmpty() && graph.wordOf(lastWord().node()) + 1 == graph.firstWord(line(lastWord()) + 1);
    }

    /** Closes the open span and returns the remaining spans. */
    List<PathSpan> finish() {
        closeReading();
        closeOff();
        return drain();
    }

    private List<PathSpan> drain() {
        List<PathSpan> spans = List.copyOf(closed);
        closed.clear();
        return spans;
    }

    private void read(PathStep step) {
        if (step.kind() == Kind.INSERTION) {
            // A reading begins with a word of the script: words added before that belong to no line.
            (off.isEmpty() && !reading.isEmpty() ? reading : off).add(step);
            return;
        }
        if (!reading.isEmpty() && off.size() >= TOKENS_OF_AN_ASIDE) {
            closeReading();
        }
        if (!reading.isEmpty() && !continues(step)) {
            if (startsAgain(step) && wordsRead() < WORDS_OF_AN_ATTEMPT) {
                reading.clear();
            } else {
                again = startsAgain(step);
                closeReading();
                again = false;
            }
        }
        if (reading.isEmpty()) {
            closeOff();
        } else {
            reading.addAll(off);
            off.clear();
        }
        reading.add(step);
    }

    /** Whether the step continues the open attempt; going back within the line is a repetition. */
    private boolean continues(PathStep step) {
        return line(step) == line(lastWord()) && !startsAgain(step);
    }

    private boolean startsAgain(PathStep step) {
        int word = graph.wordOf(step.node());
        int last = graph.wordOf(lastWord().node());
        int first = graph.firstWord(graph.line(word));
        boolean atStart = word == first || (word == first + 1 && pauseBefore(step));
        return graph.line(word) == graph.line(last) && word <= last && atStart && step.jumped();
    }

    private boolean pauseBefore(PathStep step) {
        StreamTime lastEnd = PathSpan.token(reading.get(reading.size() - 1)).end();
        return PathSpan.token(step).start().since(lastEnd).compareTo(PAUSE) > 0;
    }

    private PathStep lastWord() {
        for (int i = reading.size() - 1; i >= 0; i--) {
            if (reading.get(i).node() >= 0) {
                return reading.get(i);
            }
        }
        throw new IllegalStateException("a reading must have a word");
    }

    private int line(PathStep step) {
        return graph.line(graph.wordOf(step.node()));
    }

    private long wordsRead() {
        return reading.stream()
                .filter(s -> s.kind() == Kind.MATCH)
                .map(s -> graph.wordOf(s.node()))
                .distinct()
                .count();
    }

    private void closeReading() {
        if (reading.isEmpty()) {
            return;
        }
        if (isEvidence()) {
            lastLine = line(lastWord());
            closed.add(new PathSpan(lastLine, withoutTail()));
        } else {
            off.addAll(0, reading);
        }
        reading.clear();
    }

    /** Removes tokens that were added after the last word of the line; they belong to whatever follows. */
    private List<PathStep> withoutTail() {
        int end = reading.size();
        while (reading.get(end - 1).kind() == Kind.INSERTION) {
            end--;
        }
        off.addAll(0, reading.subList(end, reading.size()));
        return List.copyOf(reading.subList(0, end));
    }

    private boolean isEvidence() {
        int line = line(lastWord());
        double whole = 0;
        for (int word = graph.firstWord(line); word < graph.firstWord(line + 1); word++) {
            whole += surpriseOf(word);
        }
        double read = reading.stream()
                .filter(s -> s.kind() == Kind.MATCH)
                .mapToInt(s -> graph.wordOf(s.node()))
                .distinct()
                .mapToDouble(this::surpriseOf)
                .sum();
        if (wordsRead() < Math.min(FEWEST_WORDS, graph.firstWord(line + 1) - graph.firstWord(line))) {
            return false;
        }
        long matched = reading.stream().filter(s -> s.kind() == Kind.MATCH).count();
        if (2 * matched < reading.size()) {
            return false;
        }
        return read >= Math.min(needed(line), EVIDENCE_SHARE * whole);
    }

    private double needed(int line) {
        boolean begins = graph.wordOf(reading.get(0).node()) <= graph.firstWord(line) + 2;
        if (!begins) {
            return EVIDENCE_INSIDE;
        }
        return again ? EVIDENCE_AGAIN : beginsNextLine() ? EVIDENCE_NEXT : EVIDENCE;
    }

    /** Whether the reading begins the line after the one read before, as is to be expected. */
    private boolean beginsNextLine() {
        int word = graph.wordOf(reading.get(0).node());
        return line(lastWord()) == lastLine + 1 && word == graph.firstWord(lastLine + 1);
    }

    private double surpriseOf(int word) {
        return graph.word(word).forms().stream()
                .findFirst()
                .map(form -> form.stream()
                        .mapToDouble(t -> graph.surprise(graph.token(t)))
                        .sum())
                .orElse(0.0);
    }

    private void closeOff() {
        if (!off.isEmpty()) {
            closed.add(new PathSpan(PathSpan.OFF, off));
            off.clear();
        }
    }
}
