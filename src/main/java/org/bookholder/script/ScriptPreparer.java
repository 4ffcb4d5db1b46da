package org.bookholder.script;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.script.PreparedScript.PreparedWord;
import org.bookholder.script.PreparedScript.UnknownWord;
import org.bookholder.script.ScriptSettings.Wording;

/**
 * Fits a script to a recogniser's vocabulary. A word that it knows in some of its spoken forms is listened for in those;
 * a word that it knows in none gets known words that sound alike in the unknown one's place. A contraction is listened for
 * in full too: as another way to say it, or where the script's contractions are to be read as written, as its rival.
 */
public final class ScriptPreparer {
    private final Vocabulary vocabulary;
    private final boolean free;
    private final StandIns standIns;
    private final Map<String, Boolean> known = new HashMap<>();
    private final Map<String, UnknownWord> unknown = new LinkedHashMap<>();

    private ScriptPreparer(Vocabulary vocabulary, Wording contractions) {
        this.vocabulary = vocabulary;
        this.free = contractions == Wording.FREE;
        this.standIns = new StandIns(vocabulary);
    }

    /** The script as a recogniser with this vocabulary can hear it; looks each word up once. */
    public static PreparedScript prepare(Script script, Vocabulary vocabulary) {
        ScriptPreparer preparer =
                new ScriptPreparer(vocabulary, script.settings().contractions());
        List<List<PreparedWord>> lines = script.lines().stream()
                .map(line -> line.words().stream()
                        .map(word -> preparer.prepare(word, line.number()))
                        .toList())
                .toList();
        return new PreparedScript(
                script,
                lines,
                List.copyOf(preparer.unknown.values()),
                preparer.free ? List.of() : new Rivals(preparer::isKnown).in(lines));
    }

    private PreparedWord prepare(ScriptWord word, int line) {
        List<List<String>> heard =
                word.spoken().stream().filter(form -> unknownIn(form) == 0).toList();
        if (!heard.isEmpty()) {
            return new PreparedWord(word, free ? withContractions(heard) : heard, false);
        }
        List<String> nearest = word.spoken().get(0);
        for (List<String> form : word.spoken()) {
            if (unknownIn(form) < unknownIn(nearest)) {
                nearest = form;
            }
        }
        Forms forms = Forms.SILENT;
        for (String token : nearest) {
            forms = forms.then(isKnown(token) ? Forms.of(token) : standIn(token, line));
        }
        return new PreparedWord(word, forms.spoken().all(), true);
    }

    /** These forms, and the word in full or contracted, as far as the recogniser knows it. */
    private List<List<String>> withContractions(List<List<String>> forms) {
        List<List<String>> others = Contractions.others(String.join(" ", forms.get(0))).stream()
                .filter(other -> unknownIn(other) == 0)
                .toList();
        return others.isEmpty() ? forms : new Forms(forms).or(new Forms(others)).all();
    }

    private Forms standIn(String token, int line) {
        Forms forms = new Forms(standIns.of(token));
        unknown.computeIfAbsent(token, t -> new UnknownWord(t, line, forms.isEmpty() ? List.of() : forms.first()));
        return forms;
    }

    private long unknownIn(List<String> form) {
        return form.stream().filter(token -> !isKnown(token)).count();
    }

    private boolean isKnown(String token) {
        return known.computeIfAbsent(token, vocabulary::contains);
    }
}
