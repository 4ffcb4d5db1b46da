package org.bookholder.testing;

import java.util.List;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.Script;

/** Scripts for a recogniser that knows every word. */
public final class Prepared {
    private Prepared() {}

    public static PreparedScript of(Script script) {
        return new PreparedScript(
                script,
                script.lines().stream()
                        .map(line -> line.words().stream()
                                .map(word -> new PreparedWord(word, word.spoken(), false))
                                .toList())
                        .toList(),
                List.of());
    }
}
