package org.bookholder.script;

import java.util.HashSet;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.ScriptSettings.LineBreaks;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * The YAML at the head of a script, between two lines of three dashes. The names title, pace, language and lines are
 * read; others are left to other programs, unless they look like one of these mistyped.
 *
 * @param title the title, null if none is given
 * @param settings what is settled, defaults for the rest
 * @param body the text below
 * @param bodyLine line of the file at which the body begins, from 1
 */
record FrontMatter(@Nullable String title, ScriptSettings settings, String body, int bodyLine) {
    private static final List<String> NAMES = List.of("title", "pace", "language", "lines");
    private static final Pattern OPENING = Pattern.compile("---[ \\t]*\\R");
    private static final Pattern CLOSING = Pattern.compile("(?m)^(?:---|\\.\\.\\.)[ \\t]*$");

    static FrontMatter split(String text, String source) throws ProblemException {
        Matcher opening = OPENING.matcher(text);
        if (!opening.lookingAt()) {
            return new FrontMatter(null, ScriptSettings.defaults(), text, 1);
        }
        Matcher closing = CLOSING.matcher(text);
        if (!closing.find(opening.end())) {
            throw new ProblemException(
                    "the front matter is not closed", source + ":1", "put a line of three dashes below it");
        }
        String yaml = text.substring(opening.end(), closing.start());
        String body = text.substring(closing.end());
        int bodyLine = (int) text.substring(0, closing.end()).lines().count();
        return new Reader(source).read(yaml, body, bodyLine);
    }

    /** Reads one front matter; line numbers are those of the file, whose first line holds the dashes. */
    private static final class Reader {
        private final String source;
        private final Set<String> seen = new HashSet<>();
        private @Nullable String title;
        private int pace = ScriptSettings.DEFAULT_PACE;
        private String language = "en-US";
        private LineBreaks lineBreaks = LineBreaks.SENTENCES;

        Reader(String source) {
            this.source = source;
        }

        FrontMatter read(String yaml, String body, int bodyLine) throws ProblemException {
            Optional<Node> root = compose(yaml);
            if (root.isPresent()) {
                if (!(root.get() instanceof MappingNode mapping)) {
                    throw problem("the front matter is not a list of names and values", 1, "write it as name: value");
                }
                for (NodeTuple entry : mapping.getValue()) {
                    take(entry);
                }
            }
            return new FrontMatter(title, new ScriptSettings(pace, language, lineBreaks), body, bodyLine);
        }

        private Optional<Node> compose(String yaml) throws ProblemException {
            try {
                return new Compose(LoadSettings.builder().build()).composeString(yaml);
            } catch (MarkedYamlEngineException e) {
                int line = e.getProblemMark().map(mark -> mark.getLine() + 2).orElse(1);
                throw new ProblemException(
                        "the front matter is broken (" + e.getProblem() + ")",
                        source + ":" + line,
                        "write each setting as name: value, and put quotes around a value with a colon in it",
                        e);
            } catch (YamlEngineException e) {
                throw new ProblemException(
                        "the front matter is broken", source + ":1", "write each setting as name: value", e);
            }
        }

        private void take(NodeTuple entry) throws ProblemException {
            String name = entry.getKeyNode() instanceof ScalarNode key ? key.getValue() : "";
            Node value = entry.getValueNode();
            int line = entry.getKeyNode()
                    .getStartMark()
                    .map(mark -> mark.getLine() + 2)
                    .orElse(1);
            if (!seen.add(name)) {
                throw problem(
                        "the front matter is broken ('" + Draft.brief(name) + "' is given twice)",
                        line,
                        "leave one of them");
            }
            if (!NAMES.contains(name)) {
                for (String known : NAMES) {
                    if (isMistyped(name.toLowerCase(Locale.ROOT), known)) {
                        throw problem(
                                "there is no setting '" + name + "'", line, "write '" + known + "' if that is meant");
                    }
                }
                return;
            }
            if (!(value instanceof ScalarNode scalar) || scalar.getTag().equals(Tag.NULL)) {
                throw problem(
                        "'" + name + "' has no single value", line, "write one value after the colon, or leave it out");
            }
            switch (name) {
                case "title" -> title = MarkedText.plain(scalar.getValue()).text();
                case "pace" -> pace = pace(scalar.getValue(), line);
                case "language" -> language = language(scalar.getValue(), line);
                default -> lineBreaks = lineBreaks(scalar.getValue(), line);
            }
        }

        private int pace(String value, int line) throws ProblemException {
            String range = ScriptSettings.MIN_PACE + " to " + ScriptSettings.MAX_PACE + " words per minute";
            if (!value.matches("[+-]?\\d{1,9}")) {
                throw problem("pace '" + Draft.brief(value) + "' is not a whole number", line, "give " + range);
            }
            int wanted = Integer.parseInt(value);
            if (wanted < ScriptSettings.MIN_PACE || wanted > ScriptSettings.MAX_PACE) {
                throw problem("pace " + wanted + " is out of range", line, "give " + range);
            }
            return wanted;
        }

        private String language(String value, int line) throws ProblemException {
            try {
                String tag = new Locale.Builder().setLanguageTag(value).build().toLanguageTag();
                if (!tag.equals("und")) {
                    return tag;
                }
            } catch (IllformedLocaleException e) {
                throw new ProblemException(
                        "'" + Draft.brief(value) + "' is no language tag",
                        source + ":" + line,
                        "give one such as en-US",
                        e);
            }
            throw problem("'" + Draft.brief(value) + "' is no language tag", line, "give one such as en-US");
        }

        private LineBreaks lineBreaks(String value, int line) throws ProblemException {
            return switch (value) {
                case "sentences" -> LineBreaks.SENTENCES;
                case "as-written" -> LineBreaks.AS_WRITTEN;
                default ->
                    throw problem(
                            "lines '" + Draft.brief(value) + "' is not known",
                            line,
                            "give 'sentences' or 'as-written'");
            };
        }

        private ProblemException problem(String what, int line, String remedy) {
            return new ProblemException(what, source + ":" + line, remedy);
        }
    }

    /** Whether one letter was swapped, left out or added, or two changed places. */
    static boolean isMistyped(String name, String known) {
        int start = 0;
        while (start < Math.min(name.length(), known.length()) && name.charAt(start) == known.charAt(start)) {
            start++;
        }
        int nameEnd = name.length();
        int knownEnd = known.length();
        while (nameEnd > start && knownEnd > start && name.charAt(nameEnd - 1) == known.charAt(knownEnd - 1)) {
            nameEnd--;
            knownEnd--;
        }
        String a = name.substring(start, nameEnd);
        String b = known.substring(start, knownEnd);
        boolean oneLetter = a.length() <= 1 && b.length() <= 1;
        return oneLetter || (a.length() == 2 && b.contentEquals(new StringBuilder(a).reverse()));
    }
}
