package org.bookholder.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;

/**
 * Declares what can be set in a file. Reading, writing and explaining the file all use this one declaration.
 *
 * @param what what one field is called in messages, for example "limit"
 * @param fields the fields, in the order in which they are shown
 * @param <V> the type of the values
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
     * @param name the name; a name that ends with a blank stands for all names that begin with it
     * @param meaning a comment for people, with unit and source; may be empty
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
        /**
         * Reads a value, whose text may be empty.
         *
         * @throws ProblemException if it cannot be understood or is out of range
         */
        V read(Setting setting) throws ProblemException;
    }

    /**
     * Writes values as lines that can be read back, each with its meaning as a comment; a field without a text is left
     * out.
     */
    public List<String> lines(Function<String, Optional<String>> text) {
        List<String> lines = new ArrayList<>();
        for (Field<V> field : fields) {
            text.apply(field.name()).ifPresent(value -> lines.add(line(field.name(), value)));
        }
        return lines;
    }

    /** Writes the line for a value, with its meaning as a comment. */
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
