package org.bookholder.film.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.WordTime;
import org.bookholder.handoff.captions.TimedWord;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.timing.StreamTime;

/**
 * The words that were said in an attempt, in the script's spelling where they are the script's: words that were left out are
 * left out, and where others were said those are shown, so that people who cannot hear read what is heard.
 */
final class SaidWords {
    private final Attempt attempt;
    private final Map<Integer, WordTime> heard = new HashMap<>();
    private final List<Piece> pieces = new ArrayList<>();

    /** A word and when it was heard, if that is known. */
    private record Piece(String text, Optional<WordTime> time) {}

    private SaidWords(Attempt attempt) {
        this.attempt = attempt;
        attempt.words().forEach(word -> heard.put(word.word(), word));
    }

    /** The words of an attempt at a line, with session times. */
    static List<TimedWord> of(List<ScriptWord> words, Attempt attempt) {
        SaidWords said = new SaidWords(attempt);
        for (int word = 1; word <= words.size() + 1; word++) {
            said.added(word);
            if (word <= words.size()) {
                said.take(word, words.get(word - 1).written());
            }
        }
        return said.timed();
    }

    private void added(int before) {
        for (Deviation deviation : attempt.deviations()) {
            if (deviation.kind() == Deviation.Kind.ADDED && deviation.word() == before) {
                add(deviation.said(), Optional.empty());
            }
        }
    }

    private void take(int number, String written) {
        Optional<Deviation> other = attempt.deviations().stream()
                .filter(d -> d.word() == number && d.kind() != Deviation.Kind.ADDED)
                .findFirst();
        Optional<WordTime> time = Optional.ofNullable(heard.get(number));
        if (other.isEmpty()) {
            add(written, time);
        } else if (other.get().kind() == Deviation.Kind.SWAPPED) {
            String end = written.replaceFirst("^.*?([.,;:!?]*)$", "$1");
            add(other.get().said() + end, time);
        }
    }

    private void add(String text, Optional<WordTime> time) {
        if (!text.isBlank()) {
            pieces.add(new Piece(text, time));
        }
    }

    /** Words whose time is not known share the time between those whose time is. */
    private List<TimedWord> timed() {
        List<TimedWord> timed = new ArrayList<>();
        List<String> waiting = new ArrayList<>();
        StreamTime at = attempt.start();
        for (Piece piece : pieces) {
            if (piece.time().isEmpty() || piece.time().get().start().isBefore(at)) {
                waiting.add(piece.text());
                continue;
            }
            share(timed, waiting, at, piece.time().get().start());
            timed.add(new TimedWord(
                    piece.text(), piece.time().get().start(), piece.time().get().end()));
            at = piece.time().get().end();
        }
        share(timed, waiting, at, StreamTime.max(at, attempt.end()));
        return timed;
    }

    private static void share(List<TimedWord> timed, List<String> words, StreamTime from, StreamTime to) {
        long each = words.isEmpty() ? 0 : to.since(from).ticks() / words.size();
        for (int i = 0; i < words.size(); i++) {
            StreamTime start = from.plus(new StreamTime(i * each));
            timed.add(new TimedWord(words.get(i), start, start.plus(new StreamTime(each))));
        }
        words.clear();
    }
}
