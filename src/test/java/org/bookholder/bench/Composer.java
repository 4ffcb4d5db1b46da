package org.bookholder.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.bookholder.bench.Truth.LineTruth;
import org.bookholder.bench.Truth.Passage;
import org.bookholder.bench.Truth.SaidAside;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;

/**
 * Composes a reading with known deviations from single utterances: each is a line of the script. A wrong word is put into
 * the script, not into the sound, so that every voice can have one. The same seed gives the same reading.
 */
final class Composer {
    private static final int LINES_IN_A_PARAGRAPH = 5;

    private final Voice voice;
    private final Recipe recipe;
    private final Random random;
    private final long seed;
    private final Tape tape;
    private final List<Passage> passages = new ArrayList<>();
    private final List<SaidAside> asides = new ArrayList<>();

    private Composer(Voice voice, Recipe recipe, long seed) {
        this.voice = voice;
        this.recipe = recipe;
        this.seed = seed;
        random = new Random(seed);
        tape = new Tape(random);
    }

    /**
     * Composes a reading of the utterances from {@code first} on; asides are taken from the others.
     *
     * @throws IllegalArgumentException if the voice has too few utterances for the recipe
     */
    static Composition compose(Voice voice, int first, Recipe recipe, long seed) {
        int left = voice.utterances().size() - first;
        if (left < recipe.lines()) {
            throw new IllegalArgumentException("the voice " + voice.name() + " has " + left + " utterances from "
                    + first + " on, must have " + recipe.lines());
        }
        return new Composer(voice, recipe, seed).compose(first);
    }

    private Composition compose(int first) {
        List<Utterance> all = voice.utterances();
        List<Utterance> body = all.subList(first, first + recipe.lines());
        List<Utterance> others = new ArrayList<>(all.subList(0, first));
        others.addAll(all.subList(first + recipe.lines(), all.size()));
        Lots lots = new Lots(body, recipe, others.size(), random);
        ScriptChanger changer = new ScriptChanger(all, random);
        List<String> written = new ArrayList<>();
        List<LineTruth> lines = new ArrayList<>();
        for (int i = 0; i < body.size(); i++) {
            Happening happening = lots.of(i);
            written.add(changer.changed(body.get(i).text(), happening));
            lines.add(new LineTruth(i + 1, outcome(happening), deviation(happening)));
        }
        tape.room(1.0);
        for (int i = 0; i < body.size(); i++) {
            read(body, i, lots.of(i));
            Optional<Integer> aside = lots.asideAfter(i);
            if (aside.isPresent()) {
                double start = tape.seconds();
                tape.voice(others.get(aside.get()).sound());
                asides.add(new SaidAside(i + 1, start, tape.seconds()));
                tape.pause();
            }
            if (lots.pauseAfter(i)) {
                tape.room(3 + 5 * random.nextDouble());
            }
        }
        tape.room(1.5);
        Truth truth = new Truth(lines, passages, asides, tape.seconds());
        return new Composition(voice.name(), file(written), tape.sound(), tape.speechRms(), truth, seed);
    }

    private void read(List<Utterance> body, int line, Happening happening) {
        switch (happening) {
            case SKIP -> {}
            case PARTIAL -> begin(body, line);
            case RESTART -> {
                begin(body, line);
                whole(body, line);
            }
            case AGAIN -> {
                whole(body, line);
                whole(body, line);
            }
            case BACK -> {
                for (int each : new int[] {line, line - 2, line - 1, line}) {
                    whole(body, each);
                }
            }
            default -> whole(body, line);
        }
    }

    private void whole(List<Utterance> body, int line) {
        say(line, body.get(line).sound(), true);
    }

    private void begin(List<Utterance> body, int line) {
        short[] sound = body.get(line).sound();
        say(line, Sound.part(sound, 0, Sound.quietest(sound, 0.35, 0.6)), false);
    }

    private void say(int line, short[] sound, boolean complete) {
        double start = tape.seconds();
        tape.voice(sound);
        passages.add(new Passage(line + 1, start, tape.seconds(), complete));
        tape.pause();
    }

    private static Outcome outcome(Happening happening) {
        return switch (happening) {
            case SKIP -> Outcome.SKIPPED;
            case PARTIAL -> Outcome.INCOMPLETE;
            case SWAP, DROP, EXTRA -> Outcome.MISREAD;
            default -> Outcome.CLEAN;
        };
    }

    private static Optional<Deviation.Kind> deviation(Happening happening) {
        return switch (happening) {
            case SWAP -> Optional.of(Deviation.Kind.SWAPPED);
            case DROP -> Optional.of(Deviation.Kind.DROPPED);
            case EXTRA -> Optional.of(Deviation.Kind.ADDED);
            default -> Optional.empty();
        };
    }

    private static String file(List<String> written) {
        StringBuilder text = new StringBuilder("---\ntitle: Composed\nlines: as-written\n---\n");
        for (int i = 0; i < written.size(); i++) {
            text.append(written.get(i)).append((i + 1) % LINES_IN_A_PARAGRAPH == 0 ? "\n\n" : "\n");
        }
        return text.toString();
    }

    /** A sound that grows. */
    private static final class Tape {
        private final Random random;
        private short[] sound = new short[Sound.RATE];
        private int length;
        private double speechSquares;
        private long speechSamples;

        Tape(Random random) {
            this.random = random;
        }

        void voice(short[] samples) {
            add(samples);
            for (short sample : samples) {
                speechSquares += (double) sample * sample;
            }
            speechSamples += samples.length;
        }

        void room(double seconds) {
            add(Noise.room(seconds, random));
        }

        /** Between two utterances. */
        void pause() {
            room(0.25 + 0.45 * random.nextDouble());
        }

        double seconds() {
            return (double) length / Sound.RATE;
        }

        double speechRms() {
            return Math.sqrt(speechSquares / speechSamples);
        }

        short[] sound() {
            return Sound.part(sound, 0, length);
        }

        private void add(short[] samples) {
            if (length + samples.length > sound.length) {
                short[] longer = new short[2 * (length + samples.length)];
                System.arraycopy(sound, 0, longer, 0, length);
                sound = longer;
            }
            System.arraycopy(samples, 0, sound, length, samples.length);
            length += samples.length;
        }
    }
}
