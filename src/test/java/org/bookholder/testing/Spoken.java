package org.bookholder.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** What both ears make of a voice that says words at an even pace, and pauses in between. */
public final class Spoken {
    private static final double WORD_SECONDS = 0.4;
    private static final double LATE = 0.1;
    private static final int BUZZ = 3000;

    private final List<Hypothesis> hypotheses = new ArrayList<>();
    private final List<RecognizedWord> spoken = new ArrayList<>();
    private final List<StreamTime> beginnings = new ArrayList<>();
    private double now;

    /** Begins {@code seconds} into the session. */
    public Spoken(double seconds) {
        now = seconds;
    }

    /** Says {@code text}, then pauses for half a second, which ends the utterance. */
    public Spoken says(String text) {
        beginnings.add(at(now));
        List<RecognizedWord> words = new ArrayList<>();
        for (String word : text.split(" ", -1)) {
            words.add(new RecognizedWord(word, at(now), at(now + WORD_SECONDS), 1));
            now += WORD_SECONDS;
            List<String> heard = words.stream().map(RecognizedWord::text).toList();
            hypotheses.add(new Hypothesis.Partial(EarKind.OPEN, at(now + LATE), heard));
            hypotheses.add(new Hypothesis.Partial(EarKind.SCRIPT, at(now + LATE), heard));
        }
        spoken.addAll(words);
        now += 0.5;
        hypotheses.add(new Hypothesis.Final(EarKind.SCRIPT, at(now), words));
        hypotheses.add(new Hypothesis.Final(EarKind.OPEN, at(now), words));
        return this;
    }

    /** Says {@code text}, of which the script ear loses {@code word}, and the open ear hears {@code other} in its place. */
    public Spoken isMisheard(String text, String word, String other) {
        int from = hypotheses.size();
        says(text);
        for (int i = from; i < hypotheses.size(); i++) {
            if (hypotheses.get(i) instanceof Hypothesis.Final all) {
                List<RecognizedWord> heard = new ArrayList<>();
                for (RecognizedWord one : all.words()) {
                    if (!one.text().equals(word)) {
                        heard.add(one);
                    } else if (all.ear() == EarKind.OPEN) {
                        heard.add(new RecognizedWord(other, one.start(), one.end(), 1));
                    }
                }
                hypotheses.set(i, new Hypothesis.Final(all.ear(), all.heardTo(), heard));
            } else if (hypotheses.get(i) instanceof Hypothesis.Partial part) {
                List<String> heard =
                        part.words().stream().filter(one -> !one.equals(word)).toList();
                hypotheses.set(i, new Hypothesis.Partial(part.ear(), part.heardTo(), heard));
            }
        }
        return this;
    }

    /** Says nothing. */
    public Spoken pauses(double seconds) {
        now += seconds;
        return this;
    }

    /** When the voice has ended, in seconds of the session. */
    public double seconds() {
        return now;
    }

    public List<Hypothesis> hypotheses() {
        return List.copyOf(hypotheses);
    }

    /** What it sounds like: a loud buzz for each word, silence between utterances. */
    public short[] sound(int rate) {
        short[] samples = new short[(int) Math.round(now * rate)];
        for (RecognizedWord word : spoken) {
            for (int i = (int) word.start().samples(rate); i < word.end().samples(rate); i++) {
                samples[i] = (short) (i / 40 % 2 == 0 ? BUZZ : -BUZZ);
            }
        }
        return samples;
    }

    /** The same, but clipped for a moment in each of these utterances, counted from 1. */
    public short[] clipped(int rate, int... utterances) {
        short[] samples = sound(rate);
        for (int utterance : utterances) {
            int from = (int) beginnings.get(utterance - 1).samples(rate);
            Arrays.fill(samples, from, from + rate / 50, Short.MAX_VALUE);
        }
        return samples;
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
