package org.bookholder.follow.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.evidence.OpenAlignment;
import org.bookholder.follow.evidence.OpenWords;
import org.bookholder.follow.evidence.TextSimilarity;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Deviation.Kind;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.pronounce.SoundAlike;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Turns a reading of a line into an attempt and finds the words that were not read as written.
 *
 * <p>A word is reported only if the script ear did not hear it and the open ear heard nothing similar at its place.
 * Neither ear is enough on its own: the script ear hears what it expects, and the open ear mishears one word in ten.
 */
public final class AttemptJudge {
    /** How far outside an attempt the open ear's words may lie and still count as part of it. */
    private static final StreamTime MARGIN = StreamTime.ofSeconds(0.2);

    /** By how much the two ears may differ on when a word was said. */
    private static final StreamTime SLACK = StreamTime.ofSeconds(0.1);

    /** Silence at the end of a take that is long enough to show that the reader had finished. */
    private static final StreamTime FALLEN_SILENT = StreamTime.ofSeconds(0.1);

    /** How much two words may differ, by letters and by sound, and still count as one word that was misheard. */
    private static final double SAME_LETTERS = 0.56;

    private static final double SAME_SOUND = 0.4;

    /** How certain a report on a word must be where the reader is understood badly. */
    private static final double SURE = 0.8;

    private final ReadingGraph graph;
    private final OpenWords open;
    private final Loudness loudness;
    private final ReaderProfile reader;

    public AttemptJudge(ReadingGraph graph, OpenWords open, Loudness loudness, ReaderProfile reader) {
        this.graph = graph;
        this.open = open;
        this.loudness = loudness;
        this.reader = reader;
    }

    /**
     * Judges a reading of a line.
     *
     * @param after when the reading before it ends
     * @param before when the reading after it begins
     */
    public Attempt judge(PathSpan span, int take, int ordinal, StreamTime after, StreamTime before) {
        HeardLine heard = new HeardLine(graph, span);
        Loudness.Stretch said = heard.said(loudness, span, after, before);
        boolean complete = heard.complete(said, isCutOff(before));
        Loudness.Stretch bounds = complete
                ? loudness.around(heard.outermost(said), after, before)
                : loudness.around(span.start(), span.end(), after, before);
        return new Attempt(
                take,
                ordinal,
                span.line() + 1,
                bounds.start(),
                bounds.end(),
                complete,
                heard.times(),
                complete ? deviations(span, take, heard, said) : List.of());
    }

    /** Whether the take was cut while the reader was still speaking, and nothing was read after this. */
    private boolean isCutOff(StreamTime before) {
        return !loudness.unknown()
                && before.equals(loudness.heardTo())
                && loudness.quiet().isBefore(FALLEN_SILENT);
    }

    private List<Deviation> deviations(PathSpan span, int take, HeardLine heard, Loudness.Stretch said) {
        int first = graph.firstWord(span.line());
        List<PreparedWord> words = new ArrayList<>();
        for (int word = 0; word < heard.length(); word++) {
            words.add(graph.word(first + word));
        }
        List<RecognizedWord> between =
                open.between(said.start().since(MARGIN), said.end().plus(MARGIN));
        OpenAlignment alignment = new OpenAlignment(words, between);
        OtherReading other = new OtherReading(words, between, alignment);
        List<Integer> wrong = wrongWords(words, heard, alignment, other);
        wrong.removeIf(other::covers);
        reader.add(take, span.start(), told(span.line(), words, heard, alignment, wrong, between.isEmpty()));
        wrong.removeIf(word -> reader.alwaysMisheard(lowerCase(words.get(word)), alignment.said(word)));
        List<Deviation> result = new ArrayList<>(new AddedWords(words, heard, alignment).find(span));
        result.removeIf(added -> other.covers(added.word() - 1) || other.covers(added.word() - 2));
        for (int word : wrong) {
            result.add(deviation(words.get(word), alignment.said(word), word, wrong.size() > 1));
        }
        if (reader.badlyUnderstood()) {
            result.removeIf(deviation -> deviation.certainty() < SURE);
        }
        result.sort(Comparator.comparingInt(Deviation::word));
        return result;
    }

    private List<Integer> wrongWords(
            List<PreparedWord> words, HeardLine heard, OpenAlignment alignment, OtherReading other) {
        List<Integer> wrong = new ArrayList<>();
        for (int word = 0; word < heard.length(); word++) {
            boolean departs = alignment.reworded(word)
                    ? graph.asWritten() && alignment.rewordedFrom(word)
                    : isWrong(words, heard, alignment, word);
            boolean another = !words.get(word).standIn()
                    && (other.isFirmlyAnother(word) || (other.isAnother(word) && !heard.whole(word)));
            if ((departs && lost(words, heard, word)) || another || isFirmlyAnother(words, alignment, word)) {
                wrong.add(word);
            }
        }
        return wrong;
    }

    /** @param deaf whether the open ear heard nothing, as when it has failed: that says nothing of the reader */
    private static ReaderProfile.Told told(
            int line,
            List<PreparedWord> words,
            HeardLine heard,
            OpenAlignment alignment,
            List<Integer> wrong,
            boolean deaf) {
        int slips = 0;
        int understood = 0;
        Set<String> right = new HashSet<>();
        for (int word = 0; word < heard.length(); word++) {
            slips += lost(words, heard, word) && !wrong.contains(word) ? 1 : 0;
            if (alignment.exact(word)) {
                understood++;
                right.add(lowerCase(words.get(word)));
            }
        }
        Map<String, String> heardFor = new HashMap<>();
        wrong.forEach(word -> heardFor.put(lowerCase(words.get(word)), alignment.said(word)));
        return new ReaderProfile.Told(line, slips, deaf ? 0 : heard.length(), understood, heardFor, right);
    }

    /** Whether the script ear did not hear a word that it can hear. */
    private static boolean lost(List<PreparedWord> words, HeardLine heard, int word) {
        PreparedWord prepared = words.get(word);
        return !heard.matched(word) && !prepared.standIn() && !prepared.forms().isEmpty();
    }

    private static String lowerCase(PreparedWord word) {
        return word.word().plain().toLowerCase(Locale.ROOT);
    }

    /** Whether a word that the script ear did not hear was not read as written. */
    private static boolean isWrong(List<PreparedWord> words, HeardLine heard, OpenAlignment alignment, int word) {
        PreparedWord prepared = words.get(word);
        if (FunctionWords.contains(prepared)) {
            return false;
        }
        String said = alignment.said(word);
        return said.isEmpty()
                || !inPlace(heard, alignment.counterpart(word), word)
                || OtherMeaning.heardFor(prepared.word().spoken(), said)
                || (letters(prepared, said) > SAME_LETTERS && sound(prepared, said) > SAME_SOUND);
    }

    /**
     * Whether the open ear is sure of another word of the same kind, though the script ear, which knows few other words, heard the
     * one that is written. Not where they sound alike.
     */
    private static boolean isFirmlyAnother(List<PreparedWord> words, OpenAlignment alignment, int word) {
        String said = alignment.said(word);
        return OtherMeaning.heardFor(words.get(word).word().spoken(), said)
                && sound(words.get(word), said) > OtherMeaning.NEARLY_THE_SAME
                && alignment.counterpart(word).stream().allMatch(heard -> heard.confidence() >= OtherMeaning.FIRM)
                && (word == 0 || alignment.exact(word - 1))
                && (word + 1 == words.size() || alignment.exact(word + 1));
    }

    private Deviation deviation(PreparedWord word, String said, int index, boolean several) {
        double certainty = Certainty.of(said.isEmpty() ? 1 : sound(word, said), several, reader.slipsPerReading());
        Kind kind = said.isEmpty() ? Kind.DROPPED : Kind.SWAPPED;
        return new Deviation(index + 1, word.word().plain(), said, kind, certainty);
    }

    /** Whether what was heard for a word was heard between its neighbours; transposed words count as misread. */
    private static boolean inPlace(HeardLine heard, List<RecognizedWord> counterpart, int word) {
        if (counterpart.isEmpty()) {
            return false;
        }
        StreamTime start = counterpart.get(0).start();
        StreamTime end = counterpart.get(counterpart.size() - 1).end();
        boolean afterNext = word + 1 < heard.length()
                && heard.matched(word + 1)
                && !start.plus(SLACK).isBefore(heard.end(word + 1));
        boolean beforeLast = word > 0
                && heard.matched(word - 1)
                && !heard.start(word - 1).plus(SLACK).isBefore(end);
        return !afterNext && !beforeLast;
    }

    private static double letters(PreparedWord word, String said) {
        String joined = said.replace(" ", "");
        return word.word().spoken().stream()
                .mapToDouble(form -> TextSimilarity.share(String.join("", form), joined))
                .min()
                .orElse(1);
    }

    /** How different from a word the heard words sound, from 0 to 1. */
    static double sound(PreparedWord word, String said) {
        return word.word().spoken().stream()
                .mapToDouble(form -> SoundAlike.distance(String.join(" ", form), said))
                .min()
                .orElse(1);
    }
}
