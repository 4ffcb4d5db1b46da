package org.bookholder.speech.vosk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;

/** The model, five clips of a human reader, and what ears hear in them. */
final class Hearing {
    static final Path MODEL = Path.of("models", "vosk-model-en-us");
    static final int RATE = 16_000;

    /**
     * A volunteer's reading of Jane Austen, Sense and Sensibility (public domain), with its transcription, from the
     * Debian package pocketsphinx-testdata.
     */
    private static final Path CLIPS = Path.of("/usr/share/pocketsphinx/test/data/librivox");

    static final List<String> YOUNG_MAN = words("he was not an ill disposed young man");
    static final List<String> SELFISH =
            words("unless to be rather cold hearted and rather selfish is to be ill disposed");
    static final List<String> AMIABLE = words("he might even have been made amiable himself");

    private Hearing() {}

    static void needs() {
        Needs.file(MODEL, "unpacked by the build");
        Needs.file(CLIPS, "Debian package pocketsphinx-testdata");
    }

    static Grammar grammar() {
        return new Grammar(List.of(YOUNG_MAN, SELFISH, AMIABLE));
    }

    static Path clip(int number) {
        return CLIPS.resolve("sense_and_sensibility_01_austen_64kb-0" + number + ".wav");
    }

    /** Two sentences, {@link #YOUNG_MAN} and {@link #SELFISH}, a second of silence after each. */
    static short[] twoSentences() throws ProblemException {
        return join(Wav.samples(clip(880)), new short[RATE], Wav.samples(clip(890)), new short[RATE]);
    }

    static short[] join(short[]... parts) {
        int length = Arrays.stream(parts).mapToInt(p -> p.length).sum();
        short[] all = new short[length];
        int at = 0;
        for (short[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    /** All that an ear makes of samples, to the end. */
    static List<Hypothesis> hear(Ear ear, int rate, short[] samples) {
        List<Hypothesis> all = new ArrayList<>();
        for (AudioBlock block : FakeAudioSource.blocks(rate, StreamTime.ZERO, samples)) {
            all.addAll(ear.hear(block));
        }
        all.addAll(ear.finish());
        return all;
    }

    /** The words of the final results. */
    static List<RecognizedWord> finals(List<Hypothesis> all) {
        List<RecognizedWord> words = new ArrayList<>();
        for (Hypothesis hypothesis : all) {
            if (hypothesis instanceof Hypothesis.Final f) {
                words.addAll(f.words());
            }
        }
        return words;
    }

    static List<String> texts(List<RecognizedWord> words) {
        return words.stream().map(RecognizedWord::text).toList();
    }

    static List<String> words(String text) {
        return List.of(text.split(" ", -1));
    }

    @SafeVarargs
    static List<String> together(List<String>... parts) {
        List<String> all = new ArrayList<>();
        for (List<String> part : parts) {
            all.addAll(part);
        }
        return all;
    }
}
