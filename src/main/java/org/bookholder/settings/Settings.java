package org.bookholder.settings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** Settings read from YAML: names with values, groups and lists, in the order in which they were written. Immutable. */
public final class Settings {
    private static final int MOST_LETTERS = 40;

    private record Entry(Node value, int line) {}

    private final String file;
    private final int linesBefore;
    private final String what;
    private final int line;
    private final Map<String, Entry> entries = new LinkedHashMap<>();

    private Settings(String file, int linesBefore, String what, int line) {
        this.file = file;
        this.linesBefore = linesBefore;
        this.what = what;
        this.line = line;
    }

    /**
     * Reads settings.
     *
     * @param file the file that holds the text, for messages
     * @param linesBefore number of lines before the text in that file
     * @param what what the text is called in messages, such as "the front matter"
     * @throws ProblemException if it is not YAML, is not a list of names and values, or gives a name twice
     */
    public static Settings parse(String yaml, String file, int linesBefore, String what) throws ProblemException {
        Settings settings = new Settings(file, linesBefore, what, 1);
        Optional<Node> root = settings.compose(yaml);
        if (root.isPresent()) {
            if (!(root.get() instanceof MappingNode mapping)) {
                throw settings.problem(what + " is not a list of names and values", "write it as name: value");
            }
            settings.fill(mapping);
        }
        return settings;
    }

    private Optional<Node> compose(String yaml) throws ProblemException {
        try {
            return Yaml.compose(yaml);
        } catch (MarkedYamlEngineException e) {
            if (String.valueOf(e.getContext()).contains("quoted scalar")
                    && e.getContextMark().isPresent()) {
                throw new ProblemException(
                        what + " can't be read (a quotation mark is not closed)",
                        file + ":" + (e.getContextMark().get().getLine() + 1 + linesBefore),
                        "close it at the end of the value",
                        e);
            }
            int where = e.getProblemMark()
                    .map(mark -> mark.getLine() + 1 + linesBefore)
                    .orElse(1);
            throw new ProblemException(
                    what + " can't be read (" + String.valueOf(e.getProblem()).replaceAll("\\s*\\R\\s*", " ") + ")",
                    file + ":" + where,
                    "write each setting as name: value, and put quotes around a value with a colon in it",
                    e);
        } catch (YamlEngineException e) {
            throw new ProblemException(what + " can't be read", file + ":1", "write each setting as name: value", e);
        }
    }

    private void fill(MappingNode mapping) throws ProblemException {
        for (NodeTuple tuple : mapping.getValue()) {
            String name = tuple.getKeyNode() instanceof ScalarNode key ? key.getValue() : "";
            int at = lineOf(tuple.getKeyNode());
            if (entries.put(name, new Entry(tuple.getValueNode(), at)) != null) {
                throw problem(what + " can't be read ('" + brief(name) + "' is given twice)", at, "leave one of them");
            }
        }
    }

    /**
     * Returns these settings.
     *
     * @throws ProblemException if there are names other than {@code names}
     */
    public Settings only(List<String> names) throws ProblemException {
        refuseMistyped(names);
        for (Map.Entry<String, Entry> entry : entries.entrySet()) {
            if (!names.contains(entry.getKey())) {
                throw problem(
                        "there is no setting '" + brief(entry.getKey()) + "'",
                        entry.getValue().line(),
                        "write one of " + String.join(", ", names));
            }
        }
        return this;
    }

    /**
     * Returns these settings.
     *
     * @throws ProblemException if a name looks like a misspelling of one of {@code names}
     */
    public Settings refuseMistyped(List<String> names) throws ProblemException {
        for (Map.Entry<String, Entry> entry : entries.entrySet()) {
            String name = entry.getKey();
            for (String known : names.contains(name) ? List.<String>of() : names) {
                if (isMistyped(name.toLowerCase(Locale.ROOT), known)) {
                    throw problem(
                            "there is no setting '" + name + "'",
                            entry.getValue().line(),
                            "write '" + known + "' if that is meant");
                }
            }
        }
        return this;
    }

    /** Line of the file at which a name is set, from 1; 0 if it is not. */
    public int lineOf(String name) {
        Entry entry = entries.get(name);
        return entry == null ? 0 : entry.line();
    }

    /** The names that are set, in order. */
    public List<String> names() {
        return List.copyOf(entries.keySet());
    }

    /**
     * The value with this name; empty if it is not set.
     *
     * @throws ProblemException if it is not a single value
     */
    public Optional<Setting> value(String name) throws ProblemException {
        Entry entry = entries.get(name);
        if (entry == null) {
            return Optional.empty();
        }
        if (!(entry.value() instanceof ScalarNode scalar) || scalar.getTag().equals(Tag.NULL)) {
            throw problem(
                    "'" + name + "' has no single value",
                    entry.line(),
                    "write one value after the colon, or leave it out");
        }
        return Optional.of(new Setting(name, scalar.getValue(), file + ":" + entry.line()));
    }

    /**
     * The group with this name; empty settings if it is not set.
     *
     * @throws ProblemException if it is not a group
     */
    public Settings group(String name) throws ProblemException {
        Entry entry = entries.get(name);
        Settings group = new Settings(file, linesBefore, "'" + name + "'", entry == null ? line : entry.line());
        if (entry != null) {
            if (!(entry.value() instanceof MappingNode mapping)) {
                throw problem(
                        "'" + name + "' has no settings of its own",
                        entry.line(),
                        "write each below it, further in, as name: value, or leave it out");
            }
            group.fill(mapping);
        }
        return group;
    }

    /** Whether this name is set. */
    public boolean has(String name) {
        return entries.containsKey(name);
    }

    /**
     * The items of the list with this name; no items if it is not set.
     *
     * @throws ProblemException if it is not a list
     */
    public List<Item> list(String name) throws ProblemException {
        Entry entry = entries.get(name);
        if (entry == null) {
            return List.of();
        }
        if (!(entry.value() instanceof SequenceNode sequence)) {
            throw problem("'" + name + "' is not a list", entry.line(), "write each item below it, after a dash");
        }
        List<Item> items = new ArrayList<>();
        for (Node node : sequence.getValue()) {
            int at = lineOf(node);
            if (node instanceof MappingNode mapping) {
                Settings group = new Settings(file, linesBefore, "'" + name + "'", at);
                group.fill(mapping);
                items.add(new Item(Optional.empty(), Optional.of(group)));
            } else if (node instanceof ScalarNode scalar && !scalar.getTag().equals(Tag.NULL)) {
                items.add(
                        new Item(Optional.of(new Setting(name, scalar.getValue(), file + ":" + at)), Optional.empty()));
            } else {
                throw problem("an item of '" + name + "' is empty or a list", at, "write one item after each dash");
            }
        }
        return items;
    }

    /**
     * An item of a list: either a value or a group.
     *
     * @param value a single value
     * @param group settings
     */
    public record Item(Optional<Setting> value, Optional<Settings> group) {}

    /** A problem with these settings as a whole. */
    public ProblemException problem(String problem, String remedy) {
        return problem(problem, line, remedy);
    }

    /** File and line at which these settings begin. */
    public String where() {
        return file + ":" + line;
    }

    private ProblemException problem(String problem, int at, String remedy) {
        return new ProblemException(problem, file + ":" + at, remedy);
    }

    private int lineOf(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1 + linesBefore).orElse(1);
    }

    static String brief(String text) {
        String even = text.replaceAll("\\s+", " ");
        return even.length() <= MOST_LETTERS ? even : even.substring(0, MOST_LETTERS - 1) + "\u2026";
    }

    /** Whether the names differ by one letter (changed, missing or added) or by two neighbouring letters swapped. */
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
