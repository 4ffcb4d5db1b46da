package org.bookholder.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;

/**
 * Measures how well readings are followed: composes readings with known deviations, lets the program follow them, and
 * prints the table of {@code docs/accuracy.md}. Needs the Debian packages that it names when they are missing.
 *
 * <p>Arguments, all optional: numbers are seeds (without any: 1), {@code details} prints what was reported in each reading,
 * anything else is a part of the names of the readings to measure.
 */
public final class Accuracy {
    private static final List<Flite> VOICES = List.of(
            new Flite("rms", 1.0),
            new Flite("rms", 0.8),
            new Flite("rms", 1.25),
            new Flite("slt", 1.0),
            new Flite("slt", 1.2),
            new Flite("awb", 1.0));

    private final VoskEars ears;
    private final Wish wish;
    private final List<Composition> recorded = new ArrayList<>();
    private final List<Composition> synthetic = new ArrayList<>();
    private final List<Composition> unknown = new ArrayList<>();

    /** Where readings are read. */
    private enum Room {
        QUIET(""),
        PINK(", pink noise 15 dB"),
        FAN(", fan 10 dB");

        private final String label;

        Room(String label) {
            this.label = label;
        }

        Composition of(Composition reading) {
            return switch (this) {
                case QUIET -> reading;
                case PINK -> reading.inPinkNoise(15);
                case FAN -> reading.besideAFan(10);
            };
        }
    }

    /** The arguments. */
    private record Wish(List<Integer> seeds, boolean details, String only) {
        static Wish of(String[] args) {
            List<Integer> seeds = new ArrayList<>();
            boolean details = false;
            String only = "";
            for (String arg : args) {
                if (arg.matches("\\d+")) {
                    seeds.add(Integer.parseInt(arg));
                } else if (arg.equals("details")) {
                    details = true;
                } else {
                    only = arg;
                }
            }
            return new Wish(seeds.isEmpty() ? List.of(1) : List.copyOf(seeds), details, only);
        }
    }

    private Accuracy(VoskEars ears, Wish wish) {
        this.ears = ears;
        this.wish = wish;
    }

    /** Measures and prints. */
    public static void main(String[] args) throws ProblemException, InterruptedException, ExecutionException {
        Path home = Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath();
        try (VoskEars ears = VoskEars.load(home.resolve("models/vosk-model-en-us"))) {
            Accuracy accuracy = new Accuracy(ears, Wish.of(args));
            accuracy.composeRecorded();
            accuracy.composeSynthetic(home.resolve("demo-scripts"));
            accuracy.composeUnknown(home.resolve("demo-scripts"));
            accuracy.measure();
        }
    }

    private void composeRecorded() {
        if (!Files.isDirectory(Recordings.PROMPTS)) {
            print("Left out: prompts (install the packages asterisk-core-sounds-en, asterisk-core-sounds-en-g722)");
        } else if ("prompts".contains(wish.only())) {
            Voice prompts = Recordings.prompts();
            int lines = Recipe.eventful().lines();
            recorded.add(Composer.compose(prompts, 0, Recipe.faultless(), 0));
            for (int seed : wish.seeds()) {
                for (int first = 0; first + lines <= prompts.utterances().size(); first += lines) {
                    recorded.add(Composer.compose(prompts, first, Recipe.eventful(), 1000L * seed + first));
                }
            }
        }
        if (!Files.isDirectory(Recordings.NOVEL)) {
            print("Left out: novel (install the package pocketsphinx-testdata)");
        } else if ("novel".contains(wish.only())) {
            for (int seed : wish.seeds()) {
                recorded.add(Composer.compose(Recordings.novel(), 0, Recipe.brief(), seed));
            }
        }
    }

    private void composeSynthetic(Path lessons) {
        for (int i = 0; i < VOICES.size(); i++) {
            if (VOICES.get(i).name().contains(wish.only())) {
                Voice voice = VOICES.get(i).lessons(lessons);
                for (int seed : wish.seeds()) {
                    int first = (seed + i)
                            % (voice.utterances().size() - Recipe.eventful().lines());
                    synthetic.add(Composer.compose(voice, first, Recipe.eventful(), 1000L * seed + i));
                }
            }
        }
    }

    private void composeUnknown(Path lessons) {
        for (Flite voice : List.of(VOICES.get(0), VOICES.get(3))) {
            if ("unknown".contains(wish.only()) || voice.name().contains(wish.only())) {
                for (int seed : wish.seeds()) {
                    MadeUpWords words = new MadeUpWords(ears.vocabulary(), new Random(seed));
                    unknown.add(Composer.compose(voice.lessons(lessons, words::in), 0, Recipe.eventful(), seed));
                }
            }
        }
    }

    private void measure() throws InterruptedException, ExecutionException {
        Map<String, List<Future<Score>>> columns = new LinkedHashMap<>();
        ExecutorService threads =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        try {
            for (Room room : Room.values()) {
                columns.put("recorded" + room.label, submit(threads, recorded, r -> follow(room.of(r))));
                columns.put("synthetic" + room.label, submit(threads, synthetic, r -> follow(room.of(r))));
            }
            columns.put("a tenth of the words made up", submit(threads, unknown, this::follow));
            columns.put("baseline, recorded", submit(threads, recorded, this::baseline));
            columns.put("baseline, synthetic", submit(threads, synthetic, this::baseline));
            List<Score> scores = new ArrayList<>();
            for (List<Future<Score>> column : columns.values()) {
                Score sum = new Score();
                for (Future<Score> score : column) {
                    sum.add(score.get());
                }
                scores.add(sum);
            }
            print("");
            print(Measures.table(List.copyOf(columns.keySet()), scores));
        } finally {
            threads.shutdownNow();
        }
    }

    private interface Follow {
        Score of(Composition reading);
    }

    private static List<Future<Score>> submit(ExecutorService threads, List<Composition> readings, Follow follow) {
        return readings.stream().map(r -> threads.submit(() -> follow.of(r))).toList();
    }

    private Score follow(Composition reading) {
        Findings findings =
                Findings.of(ReadingRun.read(reading.script(), FakeAudioSource.of(Sound.RATE, reading.sound()), ears));
        Score score = Scorer.score(reading.truth(), findings);
        synchronized (this) {
            print(reading.name() + ", seed " + reading.seed() + ": misread " + score.misread() + ", wrongly called "
                    + score.wronglyCalled + ", lost " + score.lostFound + ", on line "
                    + Measures.named("on-line").of(score).shown());
            if (wish.details()) {
                print(Details.of(reading, findings));
            }
        }
        return score;
    }

    private Score baseline(Composition reading) {
        return Scorer.score(reading.truth(), NaiveBaseline.find(reading, ears));
    }

    private static void print(String text) {
        System.out.println(text);
    }
}
