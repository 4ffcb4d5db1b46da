package org.bookholder.script.pronounce;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.PreparedScript.UnknownWord;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptSettings.Wording;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.SpokenForms;

/**
 * Fits a script to a recogniser's vocabulary. A word that it knows in some of its spoken forms is listened for in those;
 * a word that it knows in none gets known words that sound alike in the unknown one's place. Where
 * contractions are to be read as written, what may be said for them is listened for as a rival.
 */
public final class ScriptPreparer {
    private final Vocabulary vocabulary;
    private final PronunciationSubstitutes standIns;
    private final Map<String, Boolean> known = new HashMap<>();
    private final Map<String, UnknownWord> unknown = new LinkedHashMap<>();

    private ScriptPreparer(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
        this.standIns = new PronunciationSubstitutes(vocabulary);
    }

    /** The script as a recogniser with this vocabulary can hear it; looks each word up once. */
    public static PreparedScript prepare(Script script, Vocabulary vocabulary) {
        ScriptPreparer preparer = new ScriptPreparer(vocabulary);
        List<List<PreparedWord>> lines = script.lines().stream()
                .map(line -> line.words().stream()
                        .map(word -> preparer.prepare(word, line.number()))
                        .toList())
                .toList();
        return new PreparedScript(
                script,
                lines,
                List.copyOf(preparer.unknown.values()),
                script.settings().contractions() == Wording.FREE
                        ? List.of()
                        : new AlternativeReadings(preparer::isKnown).in(lines));
    }

    private PreparedWord prepare(ScriptWord word, int line) {
        List<List<String>> heard =
                word.spoken().stream().filter(form -> unknownIn(form) == 0).toList();
        if (!heard.isEmpty()) {
            return new PreparedWord(word, heard, false);
        }
        List<String> nearest = word.spoken().get(0);
        for (List<String> form : word.spoken()) {
            if (unknownIn(form) < unknownIn(nearest)) {
                nearest = form;
            }
        }
        SpokenForms forms = SpokenForms.SILENT;
        for (String token : nearest) {
            forms = forms.then(isKnown(token) ? SpokenForms.of(token) : standIn(token, line));
        }
        return new PreparedWord(word, forms.spoken().all(), true);
    }

    private SpokenForms standIn(String token, int line) {
        SpokenForms forms = new SpokenForms(standIns.of(token));
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
