package org.bookholder.settings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.problem.ProblemException;

/**
 * The text of a settings file that people edit. It is YAML; each line holds a name and a single value, or a name with a
 * list below it. A wrong line affects no other line. Comments, and lines that cannot be understood, stay where they are
 * when a value is changed.
 *
 * <p>The form of earlier versions can be read too: no quotes around values, and comments that begin anywhere.
 * Immutable.
 */
public final class SettingsText {
    /** A list with more items is no setting; the lines after a broken one are tried again one by one. */
    private static final int MOST_LINES = 100;

    private final String file;
    private final List<String> lines;

    private SettingsText(String file, List<String> lines) {
        this.file = file;
        this.lines = List.copyOf(lines);
    }

    /**
     * Creates one from a text.
     *
     * @param file where it comes from, for messages
     */
    public static SettingsText of(String text, String file) {
        return new SettingsText(file, text.lines().toList());
    }

    /**
     * The values that a text sets.
     *
     * @param values values by name, in the order in which they were written
     * @param misread known names whose values could not be read
     * @param wrong the problems of the ignored lines, each with file and line
     * @param <V> the type of the values
     */
    public record Values<V>(Map<String, V> values, Set<String> misread, List<ProblemException> wrong) {}

    /** The lines that set one name: from {@code first} up to but not including {@code end}, counted from 0. */
    private record Entry(int first, int end) {}

    /**
     * What was read from an entry. {@code line} is its line in the current form, if it was in the form of earlier
     * versions.
     */
    private record Read<V>(String name, V value, Optional<String> line) {}

    /** Reads what the text sets. */
    public <V> Values<V> read(Form<V> form) {
        Map<String, V> values = new LinkedHashMap<>();
        List<ProblemException> wrong = new ArrayList<>();
        Set<String> misread = new LinkedHashSet<>();
        for (Entry entry : entries()) {
            try {
                Read<V> read = read(entry, form);
                if (values.putIfAbsent(read.name(), read.value()) != null) {
                    throw new ProblemException(
                            "'" + Settings.brief(read.name()) + "' is given twice", where(entry), "leave one of them");
                }
            } catch (ProblemException e) {
                wrong.add(e);
                known(ways(entry, form), form).map(Setting::name).ifPresent(misread::add);
            }
        }
        return new Values<>(values, misread, wrong);
    }

    /** The same text with lines of earlier versions in the current form. */
    public SettingsText renewed(Form<?> form) {
        List<String> all = new ArrayList<>(lines);
        for (Entry entry : entries()) {
            try {
                read(entry, form).line().ifPresent(line -> all.set(entry.first(), line));
            } catch (ProblemException e) {
                // A line that cannot be understood is left as it is.
            }
        }
        return new SettingsText(file, all);
    }

    /** The same text with a value set: in its existing line if there is one, otherwise in a new line at the end. */
    public SettingsText with(Form<?> form, String name, String value) {
        List<String> all = new ArrayList<>(lines);
        for (Entry entry : entries()) {
            Optional<Yaml.Pair> pair = Yaml.pair(text(entry));
            if (pair.filter(p -> p.name().equals(name)).isPresent()) {
                String set = Yaml.line(name, value);
                String comment = pair.get().rest().strip();
                int commentAt = lines.get(entry.first()).length() - comment.length();
                String gap = " ".repeat(Math.max(1, commentAt - set.length()));
                all.set(entry.first(), comment.isEmpty() ? set : set + gap + comment);
                all.subList(entry.first() + 1, entry.end()).clear();
                return new SettingsText(file, all);
            }
        }
        all.add(form.line(name, value));
        return new SettingsText(file, all);
    }

    /** The same text without the line that sets a name. */
    public SettingsText without(String name) {
        List<String> all = new ArrayList<>(lines);
        List<Entry> entries = entries();
        for (int i = entries.size() - 1; i >= 0; i--) {
            Entry entry = entries.get(i);
            if (Yaml.pair(text(entry)).filter(p -> p.name().equals(name)).isPresent()) {
                all.subList(entry.first(), entry.end()).clear();
            }
        }
        return new SettingsText(file, all);
    }

    /** The text, including line ends. */
    public String text() {
        return lines.isEmpty() ? "" : String.join("\n", lines) + "\n";
    }

    /**
     * One interpretation of an entry; {@code comment} is the comment after the setting, for lines of earlier versions.
     */
    private record Way(Setting setting, boolean today, String comment) {}

    private <V> Read<V> read(Entry entry, Form<V> form) throws ProblemException {
        if (text(entry).contains("\uFFFD")) {
            throw new ProblemException("this line is not UTF-8 text", where(entry), "write it anew and save as UTF-8");
        }
        List<Way> ways = ways(entry, form);
        for (Way way : ways) {
            try {
                Setting setting = way.setting();
                V value = form.read(setting);
                String line = Yaml.line(setting.name(), setting.text()) + way.comment();
                return new Read<>(setting.name(), value, way.today() ? Optional.empty() : Optional.of(line));
            } catch (ProblemException e) {
                // Another interpretation may work.
            }
        }
        Setting told = known(ways, form).orElse(ways.get(0).setting());
        return new Read<>(told.name(), form.read(told), Optional.empty());
    }

    private static Optional<Setting> known(List<Way> ways, Form<?> form) {
        return ways.stream()
                .map(Way::setting)
                .filter(s -> form.field(s.name()).isPresent())
                .findFirst();
    }

    /**
     * The interpretations to try: as YAML; then as earlier versions did: with a comment after a blank, with none, and
     * with one anywhere.
     */
    private List<Way> ways(Entry entry, Form<?> form) {
        List<Way> ways = new ArrayList<>();
        Yaml.pair(text(entry))
                .ifPresent(p -> ways.add(new Way(new Setting(p.name(), p.value(), where(entry)), true, "")));
        String line = lines.get(entry.first());
        int afterBlank = line.replaceFirst("\\s#.*", "").length();
        int anywhere = line.replaceFirst("#.*", "").length();
        for (int end : new int[] {afterBlank, line.length(), anywhere}) {
            String comment = line.substring(end).strip();
            ways.add(new Way(
                    earlier(line.substring(0, end), form, where(entry)),
                    false,
                    comment.isEmpty() ? "" : " " + comment));
        }
        return ways;
    }

    /** A line as earlier versions read it: a known name, a colon and the value. */
    private static Setting earlier(String line, Form<?> form, String where) {
        int colon = line.length();
        for (int at = line.lastIndexOf(':'); at >= 0; at = line.lastIndexOf(':', at - 1)) {
            colon = at;
            if (form.field(line.substring(0, at).strip()).isPresent()) {
                break;
            }
        }
        return new Setting(
                line.substring(0, colon).strip(),
                line.substring(Math.min(colon + 1, line.length())).strip(),
                where);
    }

    /**
     * Splits the text into entries. Following lines belong to an entry if they are indented or are list items, and if
     * together they are valid YAML.
     */
    private List<Entry> entries() {
        List<Entry> entries = new ArrayList<>();
        int first = 0;
        while (first < lines.size()) {
            int end = first + 1;
            if (isSaid(lines.get(first))) {
                int more = end;
                while (more < Math.min(lines.size(), end + MOST_LINES)
                        && lines.get(more).matches("(\\s+|- ).*\\S.*")) {
                    more++;
                }
                boolean together =
                        more > end && Yaml.pair(text(new Entry(first, more))).isPresent();
                end = together ? more : end;
                entries.add(new Entry(first, end));
            }
            first = end;
        }
        return entries;
    }

    private static boolean isSaid(String line) {
        return !line.isBlank() && !line.strip().startsWith("#") && !line.strip().equals("---");
    }

    private String text(Entry entry) {
        return String.join("\n", lines.subList(entry.first(), entry.end()));
    }

    private String where(Entry entry) {
        return file + ":" + (entry.first() + 1);
    }
}
