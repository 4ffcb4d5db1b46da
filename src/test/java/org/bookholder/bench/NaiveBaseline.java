package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.bench.Findings.LineFound;
import org.bookholder.bench.Findings.Time;
import org.bookholder.follow.graph.ScriptGrammar;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.speech.Ear;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;

/**
 * A simple baseline to compare the program with: the script ear alone, its final words aligned with the script by
 * textbook dynamic programming (Levenshtein costs), with jumps to the beginnings of lines. It needs the whole reading
 * first, and so displays no position.
 */
final class NaiveBaseline {
    private static final double DEPARTURE = 1;
    private static final double JUMP = 2.5;

    /** Words of up to this many letters are not reported. */
    private static final int SHORT = 3;

    private static final int FEWEST_OF_ASIDE = 2;
    private static final double SHORTEST_ASIDE = 0.7;

    private enum From {
        READ,
        EXTRA,
        MISSING,
        JUMP
    }

    /** One script token: its line from 0, its text, whether it is the line's first or last. */
    private record Token(int line, String text, boolean first, boolean last) {}

    /** A stretch of one line that was read in one go. */
    private static final class Stretch {
        private final int line;
        private int matched;
        private int wrong;
        private boolean ended;
        private double start = Double.POSITIVE_INFINITY;
        private double end;

        Stretch(int line) {
            this.line = line;
        }

        boolean clean() {
            return ended && wrong == 0;
        }
    }

    private final List<Token> script = new ArrayList<>();
    private final int lines;
    private final List<RecognizedWord> heard;

    private NaiveBaseline(PreparedScript prepared, List<RecognizedWord> heard) {
        this.heard = heard;
        lines = prepared.lines().size();
        for (int line = 0; line < lines; line++) {
            List<String> tokens = new ArrayList<>();
            for (PreparedWord word : prepared.lines().get(line)) {
                tokens.addAll(word.preferred());
            }
            for (int i = 0; i < tokens.size(); i++) {
                script.add(new Token(line, tokens.get(i), i == 0, i == tokens.size() - 1));
            }
        }
    }

    /** Recognises a reading with the script ear and returns the outcomes of its lines. */
    static Findings find(Composition reading, Ears ears) {
        try {
            PreparedScript prepared = ScriptPreparer.prepare(
                    ScriptReader.parse(reading.script(), "composed.md", Format.MARKDOWN), ears.vocabulary());
            List<RecognizedWord> words = new ArrayList<>();
            try (Ear ear = ears.scriptEar(ScriptGrammar.of(prepared).orElseThrow(), Sound.RATE)) {
                List<Hypothesis> all = new ArrayList<>();
                FakeAudioSource.blocks(Sound.RATE, StreamTime.ZERO, reading.sound())
                        .forEach(block -> all.addAll(ear.hear(block)));
                all.addAll(ear.finish());
                for (Hypothesis hypothesis : all) {
                    if (hypothesis instanceof Hypothesis.Final last) {
                        words.addAll(last.words());
                    }
                }
            }
            return new NaiveBaseline(prepared, words).find();
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        }
    }

    private Findings find() {
        From[][] from = new From[heard.size() + 1][script.size() + 1];
        int[] jumpFrom = new int[heard.size() + 1];
        double[] costs = align(from, jumpFrom);
        int place = 0;
        for (int p = 0; p <= script.size(); p++) {
            place = costs[p] < costs[place] ? p : place;
        }
        return read(back(from, jumpFrom, place));
    }

    /** Fills in how each cell is reached best; returns the costs after the last word heard. */
    private double[] align(From[][] from, int[] jumpFrom) {
        double[] before = new double[script.size() + 1];
        Arrays.fill(before, Double.POSITIVE_INFINITY);
        before[0] = 0;
        passOver(before, from[0], jumpFrom, 0);
        for (int i = 0; i < heard.size(); i++) {
            double[] now = new double[script.size() + 1];
            Arrays.fill(now, Double.POSITIVE_INFINITY);
            for (int p = 0; p <= script.size(); p++) {
                offer(now, from[i + 1], p, before[p] + DEPARTURE, From.EXTRA);
                if (p < script.size()) {
                    boolean same = script.get(p).text().equals(heard.get(i).text());
                    offer(now, from[i + 1], p + 1, before[p] + (same ? 0 : DEPARTURE), From.READ);
                }
            }
            passOver(now, from[i + 1], jumpFrom, i + 1);
            before = now;
        }
        return before;
    }

    /** Script tokens that are left out, and one jump. */
    private void passOver(double[] costs, From[] from, int[] jumpFrom, int row) {
        int best = 0;
        for (int p = 0; p <= script.size(); p++) {
            best = costs[p] < costs[best] ? p : best;
        }
        jumpFrom[row] = best;
        for (int p = 0; p <= script.size(); p++) {
            if (p != best && p < script.size() && script.get(p).first()) {
                offer(costs, from, p, costs[best] + JUMP, From.JUMP);
            }
            if (p > 0) {
                offer(costs, from, p, costs[p - 1] + DEPARTURE, From.MISSING);
            }
        }
    }

    private static void offer(double[] costs, From[] from, int place, double cost, From how) {
        if (cost < costs[place]) {
            costs[place] = cost;
            from[place] = how;
        }
    }

    /** One step of the path: how, which heard word (for READ and EXTRA), which script token (for READ and MISSING). */
    private record Step(From how, int word, int token) {}

    private List<Step> back(From[][] from, int[] jumpFrom, int end) {
        List<Step> steps = new ArrayList<>();
        int i = heard.size();
        int p = end;
        while (from[i][p] != null) {
            From how = from[i][p];
            switch (how) {
                case READ -> steps.add(0, new Step(how, --i, --p));
                case EXTRA -> steps.add(0, new Step(how, --i, p));
                case MISSING -> steps.add(0, new Step(how, i, --p));
                case JUMP -> {
                    steps.add(0, new Step(how, i, p));
                    p = jumpFrom[i];
                }
            }
        }
        return steps;
    }

    private Findings read(List<Step> steps) {
        List<Stretch> stretches = new ArrayList<>();
        List<Time> asides = new ArrayList<>();
        List<RecognizedWord> off = new ArrayList<>();
        Stretch open = null;
        for (Step step : steps) {
            if (step.how() == From.EXTRA) {
                off.add(heard.get(step.word()));
                continue;
            }
            addAside(asides, off);
            Token token = script.get(step.token());
            if (open == null || step.how() == From.JUMP || open.line != token.line()) {
                open = new Stretch(token.line());
                stretches.add(open);
            }
            if (step.how() != From.JUMP) {
                take(open, step, token);
            }
        }
        addAside(asides, off);
        stretches.removeIf(s -> s.matched == 0);
        return new Findings(found(stretches), asides, List.of());
    }

    private void take(Stretch stretch, Step step, Token token) {
        boolean matched =
                step.how() == From.READ && heard.get(step.word()).text().equals(token.text());
        if (matched) {
            stretch.matched++;
        } else if (token.text().length() > SHORT) {
            stretch.wrong++;
        }
        if (step.how() == From.READ) {
            RecognizedWord word = heard.get(step.word());
            stretch.start = Math.min(stretch.start, word.start().seconds());
            stretch.end = word.end().seconds();
            stretch.ended |= token.last();
        }
    }

    private static void addAside(List<Time> asides, List<RecognizedWord> off) {
        if (off.size() >= FEWEST_OF_ASIDE) {
            Time time = new Time(
                    off.get(0).start().seconds(), off.get(off.size() - 1).end().seconds());
            if (time.end() - time.start() >= SHORTEST_ASIDE) {
                asides.add(time);
            }
        }
        off.clear();
    }

    private List<LineFound> found(List<Stretch> stretches) {
        List<LineFound> found = new ArrayList<>();
        for (int line = 0; line < lines; line++) {
            int number = line;
            List<Stretch> own = stretches.stream().filter(s -> s.line == number).toList();
            Stretch best = own.stream()
                    .filter(Stretch::clean)
                    .reduce((a, b) -> b)
                    .orElseGet(() -> own.stream()
                            .filter(s -> s.ended)
                            .reduce((a, b) -> b)
                            .orElse(new Stretch(number)));
            Outcome outcome = own.isEmpty()
                    ? Outcome.SKIPPED
                    : !best.ended ? Outcome.INCOMPLETE : best.clean() ? Outcome.CLEAN : Outcome.MISREAD;
            found.add(new LineFound(
                    outcome, own.size(), best.ended ? List.of(new Time(best.start, best.end)) : List.of()));
        }
        return found;
    }
}
