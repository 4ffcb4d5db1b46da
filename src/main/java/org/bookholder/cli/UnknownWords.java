package org.bookholder.cli;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.UnknownWord;

/** Prints which words of a script the recogniser does not know. */
final class UnknownWords {
    private static final int MOST = 5;

    private UnknownWords() {}

    static void print(PreparedScript script, boolean sounding, Terminal terminal) {
        List<UnknownWord> unknown = script.unknown();
        if (unknown.isEmpty() || !sounding) {
            return;
        }
        terminal.out().println("Words that the recogniser does not know, and what it listens for in their place:");
        for (UnknownWord word : unknown.stream().limit(MOST).toList()) {
            String standIn = word.standIn().isEmpty()
                    ? "nothing; give a spoken form, as in [" + word.spoken() + "](say:sounds like this)"
                    : word.standIn().stream().collect(Collectors.joining(" ", "\"", "\""));
            terminal.out().println("  line " + word.line() + ": " + word.spoken() + " - " + standIn);
        }
        if (unknown.size() > MOST) {
            terminal.out().println("  and " + (unknown.size() - MOST) + " more");
        }
    }
}
