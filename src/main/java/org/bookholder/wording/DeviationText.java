package org.bookholder.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.ScriptLine;

/** Describes to people what was said instead of a line. */
final class DeviationText {
    private DeviationText() {}

    static String instead(ScriptLine line, Outcome outcome, Optional<Attempt> attempt) {
        return switch (outcome) {
            case CLEAN -> "";
            case SKIPPED -> "not read";
            case NOT_JUDGED -> "the program failed here; listen to it or read it again";
            case INCOMPLETE -> attempt.map(a -> brokenOff(line, a)).orElse("broken off");
            case MISREAD -> attempt.map(a -> deviations(line, a)).orElse("misread");
        };
    }

    private static String brokenOff(ScriptLine line, Attempt attempt) {
        return attempt.words().stream().mapToInt(WordTime::word).max().stream()
                .mapToObj(last -> "broken off after " + quoted(written(line, last)))
                .findFirst()
                .orElse("broken off");
    }

    /** Describes neighbouring deviations of one kind together: three words left out are one omission. */
    private static String deviations(ScriptLine line, Attempt attempt) {
        List<String> phrases = new ArrayList<>();
        List<Deviation> run = new ArrayList<>();
        for (Deviation next : attempt.deviations()) {
            if (!run.isEmpty() && !continues(run.get(run.size() - 1), next)) {
                phrases.add(phrase(line, run));
                run.clear();
            }
            run.add(next);
        }
        if (!run.isEmpty()) {
            phrases.add(phrase(line, run));
        }
        return String.join("; ", phrases);
    }

    private static boolean continues(Deviation last, Deviation next) {
        int step = last.kind() == Deviation.Kind.ADDED ? 0 : 1;
        return last.kind() == next.kind() && next.word() == last.word() + step;
    }

    private static String phrase(ScriptLine line, List<Deviation> run) {
        String written =
                quoted(join(run.stream().map(d -> written(line, d.word())).toList()));
        String said = quoted(join(run.stream().map(Deviation::said).toList()));
        return switch (run.get(0).kind()) {
            case SWAPPED -> said.isEmpty() ? written + " said otherwise" : said + " for " + written;
            case DROPPED -> written + " left out";
            case ADDED -> said.isEmpty() ? "something added" : said + " added";
        };
    }

    private static String written(ScriptLine line, int word) {
        return word >= 1 && word <= line.words().size()
                ? line.words().get(word - 1).plain()
                : "";
    }

    private static String join(List<String> words) {
        return words.stream().filter(w -> !w.isEmpty()).collect(Collectors.joining(" "));
    }

    private static String quoted(String words) {
        return words.isEmpty() ? "" : "\u201c" + words + "\u201d";
    }
}
