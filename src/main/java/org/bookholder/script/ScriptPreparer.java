package org.bookholder.script;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.script.PreparedScript.PreparedWord;
import org.bookholder.script.PreparedScript.UnknownWord;

/** Puts a script into a recogniser's words: words that it does not know get stand-ins that sound like them. */
public final class ScriptPreparer {
    private final StandIns standIns;
    private final Vocabulary vocabulary;
    private final Map<String, UnknownWord> unknown = new LinkedHashMap<>();

    private ScriptPreparer(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
        this.standIns = new StandIns(vocabulary);
    }

    /** Prepares a script for a recogniser with this vocabulary. */
    public static PreparedScript prepare(Script script, Vocabulary vocabulary) {
        ScriptPreparer preparer = new ScriptPreparer(vocabulary);
        List<List<PreparedWord>> lines =
                script.lines().stream().map(preparer::line).toList();
        return new PreparedScript(script, lines, List.copyOf(preparer.unknown.values()));
    }

    private List<PreparedWord> line(ScriptLine line) {
        return line.words().stream().map(word -> word(word, line.number())).toList();
    }

    private PreparedWord word(ScriptWord word, int line) {
        List<List<String>> known = word.spoken().stream()
                .filter(form -> form.stream().allMatch(vocabulary::contains))
                .toList();
        if (!known.isEmpty()) {
            return new PreparedWord(word, known, false);
        }
        List<String> heard = new ArrayList<>();
        for (String token : word.spoken().get(0)) {
            heard.addAll(vocabulary.contains(token) ? List.of(token) : standIn(token, line));
        }
        return new PreparedWord(word, heard.isEmpty() ? List.of() : List.of(heard), true);
    }

    private List<String> standIn(String token, int line) {
        return unknown.computeIfAbsent(token, t -> new UnknownWord(t, line, standIns.of(t)))
                .standIn();
    }
}
