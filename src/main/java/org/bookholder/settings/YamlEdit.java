package org.bookholder.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Changes single values of YAML that people write: all else in the text stays as it is, comments and order included. */
public final class YamlEdit {
    private static final String STEP = "  ";

    private final String text;
    private final String where;
    private final Optional<Node> root;

    /**
     * Reads a text.
     *
     * @param where where it stands, for messages
     * @throws ProblemException if it is not YAML
     */
    public YamlEdit(String text, String where) throws ProblemException {
        this.text = text;
        this.where = where;
        try {
            root = Yaml.compose(text);
        } catch (YamlEngineException e) {
            throw new ProblemException("this is not YAML", where, "mend it in the file", e);
        }
    }

    /** The text. */
    public String text() {
        return text;
    }

    /** The single value at a path of names; empty if there is none. */
    public Optional<String> value(List<String> path) {
        return value(root, path);
    }

    private static Optional<String> value(Optional<Node> group, List<String> path) {
        return find(group, path)
                .map(NodeTuple::getValueNode)
                .filter(ScalarNode.class::isInstance)
                .map(node -> ((ScalarNode) node).getValue())
                .filter(value -> !value.isEmpty());
    }

    /** The text with a single value at a path; groups that are missing are added. */
    public String with(List<String> path, String value) throws ProblemException {
        return put(root, path, written(value));
    }

    /** The text without the value at a path. */
    public String without(List<String> path) {
        return without(root, path);
    }

    private String without(Optional<Node> group, List<String> path) {
        Optional<NodeTuple> found = find(group, path);
        if (found.isEmpty()) {
            return text;
        }
        int start = start(found.get().getKeyNode());
        int end = end(found.get().getValueNode());
        List<String> above = path.subList(0, path.size() - 1);
        Optional<Node> parent = inside(group, above);
        if (flow(parent)) {
            return withoutItem(start, end);
        }
        // The first value of a group in a list stands behind the list's dash, which stays.
        boolean behindDash = !text.substring(lineStart(start), start).isBlank();
        List<NodeTuple> pairs = ((MappingNode) parent.orElseThrow()).getValue();
        return behindDash && pairs.size() > 1
                ? text.substring(0, start) + text.substring(start(pairs.get(1).getKeyNode()))
                : withoutLines(start, end);
    }

    /** The items of the list at a path, as they are written; none if there is no list. */
    public List<String> items(List<String> path) {
        List<String> items = new ArrayList<>();
        for (Node item : list(path)) {
            items.add(text.substring(start(item), end(item)));
        }
        return items;
    }

    /** The single value that is the item of an index in a list; empty if it is no single value. */
    public String item(List<String> path, int index) {
        return list(path).get(index) instanceof ScalarNode scalar ? scalar.getValue() : "";
    }

    /** Another text in the same place. */
    public YamlEdit becomes(String other) throws ProblemException {
        return new YamlEdit(other, where);
    }

    /** The text with one more item in the list at a path, before the item of that index or at the end. */
    public String withItem(List<String> path, int index, String item) throws ProblemException {
        List<Node> items = list(path);
        if (items.isEmpty()) {
            return put(root, path, "[" + item + "]");
        }
        if (flow(inside(root, path))) {
            int at = index < items.size() ? start(items.get(index)) : end(items.get(items.size() - 1));
            return insert(at, index < items.size() ? item + ", " : ", " + item);
        }
        int first = start(items.get(0));
        String before = text.substring(lineStart(first), first);
        int at = index < items.size() ? lineStart(start(items.get(index))) : lineEnd(end(items.get(items.size() - 1)));
        return insertLine(at, before.replaceFirst("-.*", "- ") + item);
    }

    /**
     * The text with one more item in the list at a path, as above; a list that is missing is written line by line, unless its group is in
     * braces.
     */
    public String withLine(List<String> path, int index, String item) throws ProblemException {
        Optional<Node> group = inside(root, path.subList(0, path.size() - 1));
        if (inside(root, path).isPresent() || flow(group)) {
            return withItem(path, index, item);
        }
        List<NodeTuple> pairs = group.filter(MappingNode.class::isInstance)
                .map(node -> ((MappingNode) node).getValue())
                .orElse(List.of());
        String indent = "";
        int at = text.length();
        if (!pairs.isEmpty()) {
            int first = start(pairs.get(0).getKeyNode());
            indent = " ".repeat(first - lineStart(first));
            at = lineEnd(end(pairs.get(pairs.size() - 1).getValueNode()));
        }
        String name = path.get(path.size() - 1);
        return insertLine(at, indent + name + ":\n" + indent + STEP + "- " + item);
    }

    /**
     * The text with an item of a list moved into another list or to another place, with the comments that belong to it: the one on
     * its line, and those on the lines above it unless it is the first.
     *
     * @param from the list that it is in
     * @param index its place there
     * @param to the list that it comes into; need not exist
     * @param place the place that it has there afterwards
     */
    public String moved(List<String> from, int index, List<String> to, int place) throws ProblemException {
        return new YamlMove(this).moved(from, index, to, place);
    }

    /** The text with another item in place of that of an index in the list at a path. */
    public String withItemChanged(List<String> path, int index, String item) {
        Node old = list(path).get(index);
        return text.substring(0, start(old)) + item + text.substring(end(old));
    }

    /** A single value of the group that is the item of an index in a list; empty if it is no group or has no such value. */
    public Optional<String> valueOfItem(List<String> path, int index, String name) {
        return value(Optional.of(list(path).get(index)), List.of(name));
    }

    /** The text with a value in the group that is the item of an index in a list; without it if the value is empty. */
    public String withValueOfItem(List<String> path, int index, String name, String value) throws ProblemException {
        Optional<Node> item = Optional.of(list(path).get(index));
        return value.isEmpty() ? without(item, List.of(name)) : put(item, List.of(name), written(value));
    }

    /** The single values of a list in the group that is the item of an index in a list; none if it has no such list. */
    public List<String> listOfItem(List<String> path, int index, String name) {
        List<String> values = new ArrayList<>();
        find(Optional.of(list(path).get(index)), List.of(name))
                .map(NodeTuple::getValueNode)
                .filter(SequenceNode.class::isInstance)
                .ifPresent(node -> ((SequenceNode) node)
                        .getValue().stream()
                                .filter(ScalarNode.class::isInstance)
                                .forEach(value -> values.add(((ScalarNode) value).getValue())));
        return values;
    }

    /** The text with a list of single values in the group that is the item of an index in a list; without it if there are none. */
    public String withListOfItem(List<String> path, int index, String name, List<String> values)
            throws ProblemException {
        Optional<Node> item = Optional.of(list(path).get(index));
        String written = values.stream().map(YamlEdit::written).collect(Collectors.joining(", ", "[", "]"));
        return values.isEmpty() ? without(item, List.of(name)) : put(item, List.of(name), written);
    }

    /** The text without the item of that index in the list at a path. */
    public String withoutItem(List<String> path, int index) {
        Node item = list(path).get(index);
        boolean flow = flow(inside(root, path));
        return flow ? withoutItem(start(item), end(item)) : withoutLines(start(item), end(item));
    }

    private String put(Optional<Node> group, List<String> path, String value) throws ProblemException {
        Optional<Node> node = group;
        for (int depth = 0; depth < path.size(); depth++) {
            if (node.isPresent() && node.get() instanceof SequenceNode list) {
                node = inside(list, path.get(depth));
                continue;
            }
            Optional<NodeTuple> found = find(node, path.subList(depth, depth + 1));
            if (found.isEmpty()) {
                return add(node, path.subList(depth, path.size()), value);
            }
            Node inner = found.get().getValueNode();
            boolean last = depth == path.size() - 1;
            if (last) {
                int start = start(inner);
                String gap = start == start(found.get().getKeyNode()) || text.charAt(start - 1) == ':' ? " " : "";
                return text.substring(0, start) + gap + value + text.substring(end(inner));
            }
            boolean listed = inner instanceof SequenceNode && isIndex(path.get(depth + 1));
            if (!(inner instanceof MappingNode) && !listed) {
                throw problem("'" + path.get(depth) + "' is not a group of settings", "mend it in the file");
            }
            node = Optional.of(inner);
        }
        return text;
    }

    /** Adds a value to a group that lacks it, in the style of the group. */
    private String add(Optional<Node> group, List<String> path, String value) throws ProblemException {
        if (group.isPresent() && !(group.get() instanceof MappingNode)) {
            throw problem("it holds no settings", "mend it in the file");
        }
        if (group.isEmpty()) {
            return insertLine(text.length(), block("", path, value));
        }
        List<NodeTuple> pairs = ((MappingNode) group.get()).getValue();
        if (flow(group)) {
            String pair = flowing(path, value);
            return pairs.isEmpty()
                    ? insert(start(group.get()) + 1, pair)
                    : insert(end(pairs.get(pairs.size() - 1).getValueNode()), ", " + pair);
        }
        int first = start(pairs.get(0).getKeyNode());
        String indent = " ".repeat(first - lineStart(first));
        return insertLine(lineEnd(end(pairs.get(pairs.size() - 1).getValueNode())), block(indent, path, value));
    }

    private static String block(String indent, List<String> path, String value) {
        return path.size() == 1
                ? indent + Yaml.line(path.get(0), "").strip() + " " + value
                : indent + Yaml.line(path.get(0), "").strip() + "\n"
                        + block(indent + STEP, path.subList(1, path.size()), value);
    }

    private static String flowing(List<String> path, String value) {
        return Yaml.line(path.get(0), "").strip() + " "
                + (path.size() == 1 ? value : "{" + flowing(path.subList(1, path.size()), value) + "}");
    }

    /** A value as it is written: with quotes where it needs them, also inside braces. */
    public static String written(String value) {
        boolean plain = value.matches("[\\p{L}\\p{N}][\\p{L}\\p{N} ./_+-]*") || value.matches("\\d{1,2}:\\d{2}");
        return plain ? value : '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    private String insert(int at, String more) {
        return text.substring(0, at) + more + text.substring(at);
    }

    /** The node at a path. */
    Optional<Node> node(List<String> path) {
        return inside(root, path);
    }

    /** Inserts a whole line; {@code at} is the beginning of one, or the end of the text. */
    String insertLine(int at, String line) {
        boolean unended = at > 0 && text.charAt(at - 1) != '\n';
        return text.substring(0, at) + (unended ? "\n" : "") + line + "\n" + text.substring(at);
    }

    private String withoutItem(int start, int end) {
        int after = end;
        while (after < text.length() && Character.isWhitespace(text.charAt(after))) {
            after++;
        }
        if (after < text.length() && text.charAt(after) == ',') {
            after++;
            while (after < text.length() && text.charAt(after) == ' ') {
                after++;
            }
            return text.substring(0, start) + text.substring(after);
        }
        int comma = text.lastIndexOf(',', start);
        boolean last = comma >= 0 && text.substring(comma + 1, start).isBlank();
        return text.substring(0, last ? comma : start) + text.substring(end);
    }

    private String withoutLines(int start, int end) {
        return text.substring(0, lineStart(start)) + text.substring(lineEnd(end));
    }

    int lineStart(int at) {
        return text.lastIndexOf('\n', at - 1) + 1;
    }

    /** Behind the line break that ends the line. */
    int lineEnd(int at) {
        int end = text.indexOf('\n', at);
        return end < 0 ? text.length() : end + 1;
    }

    /** The pair at a path of names; an item of a list on the way is named by its index. */
    private static Optional<NodeTuple> find(Optional<Node> group, List<String> path) {
        return inside(group, path.subList(0, path.size() - 1)).flatMap(node -> pair(node, path.get(path.size() - 1)));
    }

    private static Optional<Node> inside(Optional<Node> group, List<String> path) {
        Optional<Node> node = group;
        for (String name : path) {
            node = node.flatMap(outer -> inside(outer, name));
        }
        return node;
    }

    private static Optional<Node> inside(Node outer, String name) {
        if (outer instanceof SequenceNode list) {
            int index = isIndex(name) ? Integer.parseInt(name) : list.getValue().size();
            return index < list.getValue().size() ? Optional.of(list.getValue().get(index)) : Optional.empty();
        }
        return pair(outer, name).map(NodeTuple::getValueNode);
    }

    private static boolean isIndex(String name) {
        return name.matches("\\d{1,6}");
    }

    private static Optional<NodeTuple> pair(Node group, String name) {
        return group instanceof MappingNode mapping
                ? mapping.getValue().stream()
                        .filter(pair -> pair.getKeyNode() instanceof ScalarNode key
                                && key.getValue().equals(name))
                        .findFirst()
                : Optional.empty();
    }

    List<Node> list(List<String> path) {
        return inside(root, path)
                .filter(SequenceNode.class::isInstance)
                .map(node -> ((SequenceNode) node).getValue())
                .orElse(List.of());
    }

    static boolean flow(Optional<Node> node) {
        return node.filter(CollectionNode.class::isInstance)
                .filter(group -> ((CollectionNode<?>) group).getFlowStyle() == FlowStyle.FLOW)
                .isPresent();
    }

    int start(Node node) {
        return node.getStartMark()
                .map(mark -> text.offsetByCodePoints(0, mark.getIndex()))
                .orElseThrow();
    }

    /** Where a node ends; a group that is written line by line ends with the last thing in it, before comments that follow. */
    int end(Node node) {
        if (node instanceof MappingNode group
                && !flow(Optional.of(node))
                && !group.getValue().isEmpty()) {
            return end(group.getValue().get(group.getValue().size() - 1).getValueNode());
        }
        if (node instanceof SequenceNode list
                && !flow(Optional.of(node))
                && !list.getValue().isEmpty()) {
            return end(list.getValue().get(list.getValue().size() - 1));
        }
        return node.getEndMark()
                .map(mark -> text.offsetByCodePoints(0, mark.getIndex()))
                .orElseThrow();
    }

    private ProblemException problem(String what, String remedy) {
        return new ProblemException(what, where, remedy);
    }
}
