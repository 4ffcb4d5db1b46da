package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.Latex;
import org.bookholder.timing.StreamTime;

/**
 * The words of an attempt as they were said, in the script's spelling: a swapped word is replaced by what was heard, a
 * dropped one left out, an added one put in, and a list's bullet or number left out unless it was read. Someone who cannot
 * hear the film must read what is said in it.
 */
public final class SaidWords {
    /** Marks that end or divide a sentence; they stay when their word was not said. */
    private static final String MARKS = ".,;:!?\u2026";

    private final List<TimedWord> said = new ArrayList<>();

    private SaidWords() {}

    /** The words with session times; an attempt that was broken off has those until its last word that was heard. */
    public static List<TimedWord> of(List<ScriptWord> words, Attempt attempt) {
        List<TimedWord> timed = spread(words, attempt);
        SaidWords all = new SaidWords();
        for (int i = 1; i <= timed.size(); i++) {
            TimedWord word = timed.get(i - 1);
            boolean dropped = false;
            String text = word.text();
            for (Deviation deviation : attempt.deviations()) {
                if (deviation.word() == i) {
                    switch (deviation.kind()) {
                        case ADDED -> all.added(deviation.said(), word.start());
                        case DROPPED -> dropped = true;
                        case SWAPPED -> text = swapped(words.get(i - 1), deviation.said());
                    }
                }
            }
            if (dropped) {
                all.dropped(word.text());
            } else {
                all.said.add(new TimedWord(text, word.start(), word.end()));
            }
        }
        StreamTime end = StreamTime.max(attempt.end(), all.end(attempt.start()));
        attempt.deviations().stream()
                .filter(deviation -> deviation.kind() == Deviation.Kind.ADDED && deviation.word() > words.size())
                .forEach(deviation -> all.addedAtTheEnd(deviation.said(), end));
        return all.begun(words);
    }

    private StreamTime end(StreamTime otherwise) {
        return said.isEmpty() ? otherwise : said.get(said.size() - 1).end();
    }

    /** Added words share the time between the word before them and the one after. */
    private void added(String words, StreamTime until) {
        if (words.isBlank()) {
            return;
        }
        said.addAll(shared(List.of(words.strip().split("\\s+")), end(until), until));
    }

    /** The marks after the line's last word go behind what was added. */
    private void addedAtTheEnd(String words, StreamTime until) {
        int last = said.size() - 1;
        if (words.isBlank() || last < 0) {
            added(words, until);
            return;
        }
        TimedWord before = said.get(last);
        String marks = trailing(before.text());
        String bare = before.text().substring(0, before.text().length() - marks.length());
        said.set(last, new TimedWord(bare, before.start(), before.end()));
        added(words.strip() + marks, until);
    }

    private void dropped(String written) {
        int last = said.size() - 1;
        String marks = trailing(written);
        if (last < 0 || marks.isEmpty() || !trailing(said.get(last).text()).isEmpty()) {
            return;
        }
        TimedWord before = said.get(last);
        said.set(last, new TimedWord(before.text() + marks, before.start(), before.end()));
    }

    private static String trailing(String written) {
        int at = written.length();
        while (at > 0 && MARKS.indexOf(written.charAt(at - 1)) >= 0) {
            at--;
        }
        return written.substring(at);
    }

    /** What was said, with the punctuation and the capital letter of the word that was written. */
    private static String swapped(ScriptWord word, String said) {
        if (said.isBlank()) {
            return word.unmarked();
        }
        ScriptWord bare = bare(word);
        String plain = bare.plain();
        int at = bare.written().indexOf(plain);
        if (at < 0) {
            return said.strip();
        }
        String before = bare.written().substring(0, at);
        return before + said.strip() + bare.written().substring(at + plain.length());
    }

    /** The words, the first with a capital letter if the line is written with one. */
    private List<TimedWord> begun(List<ScriptWord> words) {
        if (!said.isEmpty() && startsBig(bare(words.get(0)).plain())) {
            TimedWord first = said.get(0);
            int at = 0;
            while (at < first.text().length() - 1
                    && !Character.isLetterOrDigit(first.text().charAt(at))) {
                at++;
            }
            String text = first.text().substring(0, at)
                    + first.text().substring(at, at + 1).toUpperCase(Locale.ROOT)
                    + first.text().substring(at + 1);
            said.set(0, new TimedWord(text, first.start(), first.end()));
        }
        return said;
    }

    private static boolean startsBig(String text) {
        return !text.isEmpty() && Character.isUpperCase(text.charAt(0));
    }

    /** Every word of a line with a time: words that were not heard share the time between those that were. */
    static List<TimedWord> spread(List<ScriptWord> words, Attempt attempt) {
        List<TimedWord> timed = new ArrayList<>();
        int done = 0;
        StreamTime at = attempt.start();
        for (WordTime heard : attempt.words()) {
            if (heard.word() <= done
                    || heard.word() > words.size()
                    || heard.start().isBefore(at)) {
                continue;
            }
            timed.addAll(shared(written(words.subList(done, heard.word() - 1)), at, heard.start()));
            timed.add(new TimedWord(shown(words.get(heard.word() - 1), heard.said()), heard.start(), heard.end()));
            done = heard.word();
            at = heard.end();
        }
        if (attempt.complete()) {
            timed.addAll(shared(written(words.subList(done, words.size())), at, StreamTime.max(at, attempt.end())));
        }
        return timed;
    }

    private static List<String> written(List<ScriptWord> words) {
        return words.stream().map(word -> readable(word, word.unmarked())).toList();
    }

    private static String shown(ScriptWord word, String said) {
        return readable(word, word.isNumberIn(said) ? word.written() : word.unmarked());
    }

    /** A formula in TeX in words, as it may be said: viewers can't read its source. */
    private static String readable(ScriptWord word, String text) {
        int from = text.indexOf('$');
        int end = from < 0 ? -1 : Latex.end(text, from);
        if (end < 0 || text.substring(0, from).codePoints().anyMatch(Character::isLetterOrDigit)) {
            return text;
        }
        // What is tied to it, as in "$n$th", is said with it.
        String behind = text.substring(end).replaceFirst("^[-\u2013]?\\p{L}+", "");
        return text.substring(0, from) + String.join(" ", word.spoken().get(0)) + behind;
    }

    private static ScriptWord bare(ScriptWord word) {
        return new ScriptWord(word.unmarked(), word.spoken(), word.emphasis());
    }

    static List<TimedWord> shared(List<String> words, StreamTime from, StreamTime to) {
        List<TimedWord> timed = new ArrayList<>();
        long each = words.isEmpty() ? 0 : to.since(from).ticks() / words.size();
        for (int i = 0; i < words.size(); i++) {
            StreamTime start = from.plus(new StreamTime(i * each));
            timed.add(new TimedWord(words.get(i), start, start.plus(new StreamTime(each))));
        }
        return timed;
    }
}
