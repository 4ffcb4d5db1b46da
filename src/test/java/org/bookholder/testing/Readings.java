package org.bookholder.testing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** Recognised words, session events and attempts of imagined readings, made by hand. */
public final class Readings {
    /** When imagined sessions begin. */
    public static final Instant MORNING = Instant.parse("2026-01-05T09:00:00Z");

    private Readings() {}

    public static StreamTime s(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }

    /** A word as an ear recognises it for sure. Seconds. */
    public static RecognizedWord word(String text, double start, double end) {
        return new RecognizedWord(text, s(start), s(end), 1);
    }

    /** A take rolled {@code at} seconds into the audio and as long after {@link #MORNING}. */
    public static SessionEvent rolled(int take, double at) {
        return rolled(take, at, MORNING.plus(s(at).toDuration()));
    }

    public static SessionEvent rolled(int take, double at, Instant when) {
        return new SessionEvent.TakeStarted(s(at), take, when, "a microphone", ReadingPosition.START);
    }

    public static SessionEvent cut(int take, double at) {
        return cut(take, at, MORNING.plus(s(at).toDuration()));
    }

    public static SessionEvent cut(int take, double at, Instant when) {
        return new SessionEvent.TakeEnded(s(at), take, when, TakeEnd.CUT);
    }

    public static SessionEvent moved(double at, int line, int word, int wordsRead) {
        return new SessionEvent.PositionMoved(s(at), new ReadingPosition(line, word), Mover.VOICE, wordsRead);
    }

    public static SessionEvent settled(Attempt attempt) {
        return new SessionEvent.AttemptSettled(attempt.end(), attempt);
    }

    /** One move for each word of {@code script}, evenly {@code seconds} apart; the first word comes at {@code from}. */
    public static List<SessionEvent> evenly(Script script, double from, double seconds) {
        List<SessionEvent> events = new ArrayList<>();
        for (ScriptLine line : script.lines()) {
            for (int word = 1; word <= line.words().size(); word++) {
                boolean last = word == line.words().size();
                events.add(moved(
                        from + events.size() * seconds,
                        last ? line.number() + 1 : line.number(),
                        last ? 1 : word + 1,
                        1));
            }
        }
        return events;
    }

    /** A complete attempt at a line of {@code words} words, evenly spread over its time. */
    public static Attempt complete(
            int take, int ordinal, int line, int words, double start, double end, Deviation... off) {
        return new Attempt(
                take, ordinal, line, s(start), s(end), true, times(words, words, start, end), Arrays.asList(off));
    }

    /** An attempt that was broken off after {@code words} words. */
    public static Attempt broken(int take, int ordinal, int line, int words, double start, double end) {
        return new Attempt(take, ordinal, line, s(start), s(end), false, times(words, words, start, end), List.of());
    }

    public static Deviation swapped(int word, String written, String said) {
        return new Deviation(word, written, said, Deviation.Kind.SWAPPED, 1);
    }

    public static Deviation dropped(int word, String written) {
        return new Deviation(word, written, "", Deviation.Kind.DROPPED, 1);
    }

    public static Deviation added(int word, String said) {
        return new Deviation(word, "", said, Deviation.Kind.ADDED, 1);
    }

    private static List<WordTime> times(int words, int of, double start, double end) {
        double each = (end - start) / of;
        return IntStream.range(0, words)
                .mapToObj(i -> new WordTime(i + 1, s(start + i * each), s(start + (i + 1) * each)))
                .toList();
    }
}
