package org.bookholder.settings;

import java.util.Optional;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.ParserException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** Reads YAML: a whole text, or one name with its value. */
final class Yaml {
    /** Deeper than anyone nests settings by hand; composing the nodes recurses once per level. */
    static final int DEEPEST = 50;

    private static final LoadSettings SETTINGS = LoadSettings.builder().build();

    private Yaml() {}

    /**
     * A name with its value.
     *
     * @param value a single value, or the items of a list separated by commas; empty if there is none
     * @param rest the text after a single value on its line: a comment with the blanks before it, or nothing
     */
    record Pair(String name, String value, String rest) {}

    /**
     * The node in a text; empty if there is none.
     *
     * @throws YamlEngineException if it is not YAML, or is nested more than {@value #DEEPEST} levels deep
     */
    static Optional<Node> compose(String text) {
        int depth = 0;
        for (Event event : new Parse(SETTINGS).parseString(text)) {
            if (event instanceof CollectionStartEvent) {
                depth++;
            } else if (event instanceof CollectionEndEvent) {
                depth--;
            }
            if (depth > DEEPEST) {
                throw new ParserException("lists and names are nested too deeply", event.getStartMark());
            }
        }
        return new Compose(SETTINGS).composeString(text);
    }

    /** The pair in a text; empty if the text is not YAML or holds something else. */
    static Optional<Pair> pair(String text) {
        try {
            Optional<Node> root = compose(text);
            return root.isPresent() && root.get() instanceof MappingNode mapping
                    ? pair(text, mapping)
                    : Optional.empty();
        } catch (YamlEngineException e) {
            return Optional.empty();
        }
    }

    private static Optional<Pair> pair(String text, MappingNode mapping) {
        if (mapping.getValue().size() != 1 || !(mapping.getValue().get(0).getKeyNode() instanceof ScalarNode name)) {
            return Optional.empty();
        }
        Node node = mapping.getValue().get(0).getValueNode();
        Optional<String> value = value(node);
        String rest = text.contains("\n")
                ? ""
                : node.getEndMark()
                        .map(end -> text.substring(text.offsetByCodePoints(0, end.getIndex())))
                        .orElse("");
        return value.map(v -> new Pair(name.getValue(), v, rest));
    }

    private static Optional<String> value(Node node) {
        if (node instanceof ScalarNode scalar) {
            return Optional.of(scalar.getTag().equals(Tag.NULL) ? "" : scalar.getValue());
        }
        if (node instanceof SequenceNode list && list.getValue().stream().allMatch(ScalarNode.class::isInstance)) {
            return Optional.of(list.getValue().stream()
                    .map(item -> ((ScalarNode) item).getValue())
                    .collect(Collectors.joining(", ")));
        }
        return Optional.empty();
    }

    /** Writes the line for a name and value, with quotes where needed. */
    static String line(String name, String value) {
        String plainName = pair(name + ": 1").filter(p -> p.name().equals(name)).isPresent() ? name : quoted(name);
        String plain = value.isEmpty() ? plainName + ":" : plainName + ": " + value;
        return pair(plain)
                        .filter(p -> p.value().equals(value) && p.rest().isBlank())
                        .isPresent()
                ? plain
                : plainName + ": " + quoted(value);
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "''") + "'";
    }
}
