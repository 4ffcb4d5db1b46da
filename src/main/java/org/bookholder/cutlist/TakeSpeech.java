package org.bookholder.cutlist;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * Everything said in one take, attempts and asides, to find the silences in between.
 *
 * @param start where the take begins
 * @param end where it ends
 * @param spans the stretches of speech, ordered by start
 */
record TakeSpeech(StreamTime start, StreamTime end, List<Span> spans) {
    /** Recognised times of neighbouring words may overlap by about this much. */
    private static final StreamTime OVERLAP = StreamTime.ofSeconds(0.05);

    /**
     * A stretch of speech.
     *
     * @param whole whether it was a line read to its end, so that its end is reliable
     */
    record Span(StreamTime start, StreamTime end, boolean whole) {}

    static TakeSpeech of(SessionState state, Take take) {
        Stream<Span> attempts = state.lines().all().stream()
                .flatMap(line -> line.attempts().stream())
                .filter(a -> a.take() == take.number())
                .map(a -> new Span(a.start(), a.end(), a.complete()));
        Stream<Span> asides = state.lines().asides().stream()
                .filter(a -> a.take() == take.number())
                .map(a -> new Span(a.start(), a.end(), false));
        return new TakeSpeech(
                take.start(),
                take.end(),
                Stream.concat(attempts, asides)
                        .sorted(Comparator.comparing(Span::start))
                        .toList());
    }

    /** Start of the silence before an attempt. */
    StreamTime quietBefore(Attempt attempt) {
        return lastBefore(attempt)
                .map(s -> StreamTime.max(start, StreamTime.min(s.end(), attempt.start())))
                .orElse(start);
    }

    /** Whether the speech before an attempt was not a complete line. */
    boolean brokenOffBefore(Attempt attempt) {
        return lastBefore(attempt).filter(s -> !s.whole()).isPresent();
    }

    private Optional<Span> lastBefore(Attempt attempt) {
        return spans.stream()
                .filter(s -> !attempt.start().plus(OVERLAP).isBefore(s.end()))
                .filter(s -> s.start().isBefore(attempt.start()))
                .max(Comparator.comparing(Span::end));
    }

    /** End of the silence after an attempt. */
    StreamTime quietAfter(Attempt attempt) {
        return spans.stream()
                .filter(s -> !s.start().plus(OVERLAP).isBefore(attempt.end()))
                .filter(s -> attempt.end().isBefore(s.end()))
                .map(s -> StreamTime.max(s.start(), attempt.end()))
                .reduce(StreamTime.max(end, attempt.end()), StreamTime::min);
    }

    /** Whether something was said between two attempts. */
    boolean interrupted(Attempt first, Attempt then) {
        StreamTime from = first.end();
        StreamTime to = then.start();
        return spans.stream()
                .anyMatch(s -> from.isBefore(s.end().plus(OVERLAP))
                        && s.start().isBefore(to)
                        && !s.start().plus(OVERLAP).isBefore(from)
                        && s.end().compareTo(to.plus(OVERLAP)) <= 0);
    }
}
