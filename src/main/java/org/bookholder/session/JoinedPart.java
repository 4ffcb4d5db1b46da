package org.bookholder.session;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.pace.TakeTime;
import org.bookholder.timing.StreamTime;

/**
 * One of the sessions of {@link JoinedSessions}, and what its takes, times and lines are called there.
 *
 * @param own the session by itself
 * @param numbers from its line numbers to the lesson's; lines that the lesson does not have any more are not in it
 * @param takesBefore how many takes come before its first
 * @param before where it begins, a whole number of seconds
 */
public record JoinedPart(SessionState own, Map<Integer, Integer> numbers, int takesBefore, StreamTime before) {
    /** Copies the map. */
    public JoinedPart {
        numbers = Map.copyOf(numbers);
    }

    /** A length that holds a session and a little more, in whole seconds, so that samples of any rate stay where they are. */
    static StreamTime wholeSeconds(SessionState state) {
        return new StreamTime((state.now().ticks() / StreamTime.TICKS_PER_SECOND + 2) * StreamTime.TICKS_PER_SECOND);
    }

    /** Whether a take is of this session, by its number among all. */
    public boolean has(int take) {
        return take > takesBefore && take <= takesBefore + own.takes().count();
    }

    /** The number among all of a take of this session. */
    public int take(int number) {
        return takesBefore + number;
    }

    /** The number in this session of one of its takes. */
    public int ownTake(int number) {
        return number - takesBefore;
    }

    /** A time of this session among those of all. */
    public StreamTime time(StreamTime time) {
        return before.plus(time);
    }

    /** A time of all as one of this session; its beginning if it lies before that. */
    public StreamTime ownTime(StreamTime time) {
        return time.since(before);
    }

    /** Where it ends. */
    StreamTime end() {
        return time(own.now());
    }

    List<Take> takes() {
        return own.takes().all().stream()
                .map(t -> new Take(take(t.number()), time(t.start()), time(t.end()), t.when(), t.audio()))
                .toList();
    }

    List<TakeTime.Span> holds() {
        return own.takes().holds().stream()
                .map(hold -> new TakeTime.Span(time(hold.start()), time(hold.end())))
                .toList();
    }

    /**
     * What was said besides the lesson's lines, in order of time; it follows the nearest line before it that the lesson still has.
     * Attempts at lines that it no longer has are among it, so that no cut runs over them.
     */
    List<Aside> asides() {
        Stream<Aside> gone = own.lines().all().stream()
                .filter(notes -> !numbers.containsKey(notes.line()))
                .flatMap(notes -> notes.attempts().stream())
                .map(a -> new Aside(
                        a.take(),
                        a.start(),
                        a.end(),
                        own.script().lines().get(a.line() - 1).text(),
                        a.line()));
        return Stream.concat(own.lines().asides().stream(), gone)
                .sorted(Comparator.comparing(Aside::start))
                .map(a -> new Aside(take(a.take()), time(a.start()), time(a.end()), a.said(), lineAtOrBefore(a.line())))
                .toList();
    }

    private int lineAtOrBefore(int line) {
        int at = line;
        while (at > 0 && !numbers.containsKey(at)) {
            at--;
        }
        return numbers.getOrDefault(at, 0);
    }

    /** Its notes on lines that the lesson has; nobody can take them back there. */
    List<Note> notes() {
        return own.remarks().notes().stream()
                .filter(note -> numbers.containsKey(note.line()))
                .map(n -> new Note(0, time(n.at()), number(n.line()), n.text(), n.by(), n.pickup()))
                .toList();
    }

    List<UnsavedStretch> notSaved() {
        return own.measures().sound().notSaved().stream()
                .map(lost -> new UnsavedStretch(take(lost.take()), time(lost.start()), time(lost.end())))
                .toList();
    }

    /** What is known of its lines, by the lesson's numbers. */
    Map<Integer, LineNotes> lines() {
        Map<Integer, LineNotes> lines = new HashMap<>();
        for (LineNotes notes : own.lines().all()) {
            if (numbers.containsKey(notes.line())) {
                int line = number(notes.line());
                lines.put(
                        line,
                        new LineNotes(
                                line,
                                notes.outcome(),
                                notes.reached(),
                                notes.attempts().stream().map(this::attempt).toList(),
                                notes.best().map(this::attempt),
                                notes.marks(),
                                notes.lastMark().map(this::time),
                                notes.decision().map(this::decision)));
            }
        }
        return lines;
    }

    /** What was decided about its lines in the film, by the lesson's numbers. */
    Map<Integer, FilmChoices> film() {
        Map<Integer, FilmChoices> film = new HashMap<>();
        own.remarks().rulings().film().forEach((line, choices) -> {
            if (numbers.containsKey(line)) {
                film.put(
                        number(line),
                        new FilmChoices(
                                choices.framing(),
                                choices.pause(),
                                choices.in().map(this::place),
                                choices.out().map(this::place),
                                choices.camera(),
                                choices.points(),
                                choices.sound(),
                                choices.takes()));
            }
        });
        return film;
    }

    private int number(int line) {
        return Optional.ofNullable(numbers.get(line)).orElseThrow();
    }

    private Attempt attempt(Attempt a) {
        return new Attempt(
                take(a.take()),
                a.ordinal(),
                number(a.line()),
                time(a.start()),
                time(a.end()),
                a.complete(),
                a.words().stream()
                        .map(w -> new WordTime(w.word(), time(w.start()), time(w.end()), w.said()))
                        .toList(),
                a.deviations());
    }

    private Decision decision(Decision made) {
        int take = made.take() == 0 ? 0 : take(made.take());
        return new Decision(made.choice(), take, made.ordinal(), time(made.at()));
    }

    private FilmChoices.Place place(FilmChoices.Place place) {
        return new FilmChoices.Place(take(place.take()), place.ordinal(), time(place.at()));
    }
}
