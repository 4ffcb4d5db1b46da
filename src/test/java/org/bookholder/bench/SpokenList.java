package org.bookholder.bench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.FreeReading;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;

/**
 * A list of what is written and of all the ways to say it, from the resources in {@code spoken}.
 *
 * <p>An item is {@code written => before {one way | another} after}. A heading {@code ## en-GB: kind} names the language of the
 * script that the items below it stand in.
 */
record SpokenList(List<Item> items) {
    /**
     * An item.
     *
     * @param language of the script
     * @param kind the heading above it
     * @param forms each with all words of the sentence, in small letters
     */
    record Item(String language, String kind, String written, List<String> forms) {
        /** The forms that the program does not allow. */
        List<String> missed() throws ProblemException {
            List<ScriptWord> words = words();
            return forms.stream().filter(form -> !allows(words, form)).toList();
        }

        private List<ScriptWord> words() throws ProblemException {
            String script = "---\nlanguage: " + language + "\nlines: as-written\n---\n" + written;
            List<ScriptWord> words = new ArrayList<>();
            for (ScriptLine line :
                    ScriptReader.parse(script, "x.txt", Format.PLAIN_TEXT).lines()) {
                words.addAll(line.words());
            }
            return words;
        }

        /** The forms that are not even understood as another reading of the same. */
        List<String> strange() throws ProblemException {
            List<ScriptWord> words = words();
            return forms.stream()
                    .filter(form -> !allows(words, form) && !isUnderstood(words, form))
                    .toList();
        }
    }

    /** Reads the list {@code name}. */
    static SpokenList read(String name) throws IOException {
        try (InputStream in = SpokenList.class.getResourceAsStream("/spoken/" + name)) {
            if (in == null) {
                throw new IllegalArgumentException("name is " + name + ", must be a resource in spoken");
            }
            List<Item> items = new ArrayList<>();
            String[] heading = {"en-US", ""};
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n", -1)) {
                int arrow = line.indexOf(" => ");
                if (line.startsWith("## ")) {
                    heading = line.substring(3).split(": ", 2);
                } else if (arrow > 0 && !line.startsWith("# ")) {
                    items.add(new Item(
                            heading[0], heading[1], line.substring(0, arrow), expanded(line.substring(arrow + 4))));
                }
            }
            return new SpokenList(items);
        }
    }

    private static List<String> expanded(String said) {
        int open = said.indexOf('{');
        int close = said.indexOf('}');
        List<String> forms = new ArrayList<>();
        for (String way : said.substring(open + 1, close).split("\\|", -1)) {
            forms.add((said.substring(0, open) + way.strip() + said.substring(close + 1)).strip());
        }
        return forms;
    }

    private static boolean isUnderstood(List<ScriptWord> words, String said) {
        List<String> all = List.of(said.split(" ", -1));
        Set<Integer> ends = Set.of(0);
        for (ScriptWord word : words) {
            Set<Integer> next = new HashSet<>();
            for (int end : ends) {
                for (List<String> form : word.spoken()) {
                    int behind = end + form.size();
                    if (behind <= all.size() && all.subList(end, behind).equals(form)) {
                        next.add(behind);
                    }
                }
                next.addAll(FreeReading.ends(word.written(), all, end));
            }
            ends = next;
        }
        return ends.contains(all.size());
    }

    /** Whether {@code said} is one form of each word after the other. */
    private static boolean allows(List<ScriptWord> words, String said) {
        Set<String> left = Set.of(said + " ");
        for (ScriptWord word : words) {
            Set<String> next = new HashSet<>();
            for (List<String> form : word.spoken()) {
                String start = form.isEmpty() ? "" : String.join(" ", form) + " ";
                left.stream()
                        .filter(rest -> rest.startsWith(start))
                        .forEach(rest -> next.add(rest.substring(start.length())));
            }
            left = next;
        }
        return left.contains("");
    }
}
