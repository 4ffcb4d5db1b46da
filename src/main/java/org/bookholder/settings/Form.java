package org.bookholder.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;

/**
 * What can be set in a file: the one declaration from which it is read, written and explained.
 *
 * @param what what one of the fields is called in messages: "limit"
 * @param fields the fields, in the order in which they are shown
 * @param <V> what a value is read to
 */
public record Form<V>(String what, List<Field<V>> fields) {
    private static final int COMMENT_AT = 40;

    /** Copies the list. */
    public Form {
        fields = List.copyOf(fields);
    }

    /**
     * One name that can be set.
     *
     * @param name the name; one that ends with a blank stands for all that begin with it
     * @param meaning a comment for people, with the unit and the source; may be empty
     * @param reader reads a value
     */
    public record Field<V>(String name, String meaning, Reader<V> reader) {
        private boolean is(String given) {
            boolean open = name.endsWith(" ");
            return open ? given.startsWith(name) && given.length() > name.length() : given.equals(name);
        }
    }

    /** Reads a value. */
    @FunctionalInterface
    public interface Reader<V> {
        /** Reads it; a problem if it cannot be understood or is out of range. The text may be empty. */
        V read(Setting setting) throws ProblemException;
    }

    /** The lines that read back as some values, each with its meaning; a field without a text is left out. */
    public List<String> lines(Function<String, Optional<String>> text) {
        List<String> lines = new ArrayList<>();
        for (Field<V> field : fields) {
            text.apply(field.name()).ifPresent(value -> lines.add(line(field.name(), value)));
        }
        return lines;
    }

    /** The line that sets a value, with its meaning as a comment. */
    String line(String name, String value) {
        String set = Yaml.line(name, value);
        String meaning = field(name).map(Field::meaning).orElse("");
        return meaning.isEmpty() ? set : String.format(Locale.ROOT, "%-" + COMMENT_AT + "s # %s", set, meaning);
    }

    Optional<Field<V>> field(String name) {
        return fields.stream().filter(field -> field.is(name)).findFirst();
    }

    V read(Setting setting) throws ProblemException {
        Optional<Field<V>> field = field(setting.name());
        if (field.isEmpty()) {
            throw setting.problem(
                    "there is no " + what + " '" + Settings.brief(setting.name()) + "'",
                    "write one of " + fields.stream().map(f -> f.name().strip()).collect(Collectors.joining(", ")));
        }
        return field.get().reader().read(setting);
    }
}
