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
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.script.normalize.SpokenForms;

/**
 * Fits a script to a recogniser's vocabulary. If the recogniser knows some spoken forms of a word, it listens for
 * those; if it knows none, it listens for known words that sound like it. If contractions must be read as written, it
 * also listens for the other wording, as a rival.
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

    /** Prepares a script for a recogniser with this vocabulary; looks up each word once. */
    public static PreparedScript prepare(Script script, Vocabulary vocabulary) {
        return prepare(script, SpokenHabits.NONE, vocabulary);
    }

    /** The same for an author who has a way of saying things; the script itself stays as it is. */
    public static PreparedScript prepare(Script script, SpokenHabits habits, Vocabulary vocabulary) {
        ScriptPreparer preparer = new ScriptPreparer(vocabulary);
        List<List<PreparedWord>> lines = script.lines().stream()
                .map(line -> line.words().stream()
                        .map(word -> preparer.prepare(habits.of(word), line.number()))
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
