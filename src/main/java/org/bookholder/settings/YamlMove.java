package org.bookholder.settings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/** Moves an item from one list of a YAML text to another, with the comments that belong to it. */
final class YamlMove {
    private final YamlEdit before;

    YamlMove(YamlEdit before) {
        this.before = before;
    }

    /**
     * What is moved.
     *
     * @param text the item as it is written, without its dash; further lines are indented as behind a dash in the first column
     * @param braced the same in one line
     * @param above the comment lines above it, without their indentation, each with its line break
     * @param behind the comment on its last line; empty if there is none
     */
    private record Item(String text, String braced, String above, String behind) {}

    /** See {@link YamlEdit#moved}. */
    String moved(List<String> from, int index, List<String> to, int place) throws ProblemException {
        Item item = item(from, index);
        YamlEdit without = before.becomes(without(from, index));
        if (without.list(from).isEmpty()) {
            without = without.becomes(without.without(from));
        }
        return inserted(without, to, place, item);
    }

    private Item item(List<String> from, int index) {
        String text = before.text();
        Node node = before.list(from).get(index);
        int start = before.start(node);
        int end = before.end(node);
        String written = text.substring(start, end);
        if (YamlEdit.flow(before.node(from))) {
            return new Item(written, written, "", "");
        }
        int column = start - before.lineStart(start);
        String rest = text.substring(end, before.lineEnd(end)).strip();
        String even = written.replaceAll("\\R {" + column + "}", "\n  ");
        String above =
                text.substring(above(from, index), before.lineStart(start)).replaceAll("(?m)^ +", "");
        return new Item(even, braced(node, written), above, rest.startsWith("#") ? rest : "");
    }

    private String braced(Node node, String written) {
        if (!(node instanceof MappingNode group) || YamlEdit.flow(Optional.of(node))) {
            return written;
        }
        return group.getValue().stream()
                .map(pair -> before.text().substring(before.start(pair.getKeyNode()), before.end(pair.getKeyNode()))
                        + ": "
                        + before.text().substring(before.start(pair.getValueNode()), before.end(pair.getValueNode())))
                .collect(Collectors.joining(", ", "{", "}"));
    }

    /** Where the comments begin that stand directly above an item; those above a list's first one belong to the list. */
    private int above(List<String> path, int index) {
        return above(before, path, index);
    }

    private static int above(YamlEdit file, List<String> path, int index) {
        int at = file.lineStart(file.start(file.list(path).get(index)));
        while (index > 0 && at > 0) {
            int line = file.lineStart(at - 1);
            if (!file.text().substring(line, at).strip().startsWith("#")) {
                break;
            }
            at = line;
        }
        return at;
    }

    private String without(List<String> from, int index) {
        if (YamlEdit.flow(before.node(from))) {
            return before.withoutItem(from, index);
        }
        int end = before.end(before.list(from).get(index));
        return before.text().substring(0, above(from, index)) + before.text().substring(before.lineEnd(end));
    }

    private static String inserted(YamlEdit file, List<String> to, int place, Item item) throws ProblemException {
        List<Node> items = file.list(to);
        boolean braces = YamlEdit.flow(file.node(to)) || (items.isEmpty() && inBraces(file, to));
        if (braces) {
            String comments = item.above() + (item.behind().isEmpty() ? "" : item.behind() + "\n");
            YamlEdit more = file.becomes(file.withLine(to, place, item.braced()));
            return comments.isEmpty() ? more.text() : commented(more, to, comments);
        }
        String behind = item.behind().isEmpty() ? "" : "  " + item.behind();
        if (items.isEmpty()) {
            YamlEdit more = file.becomes(file.withLine(to, 0, item.braced() + behind));
            int line = more.lineStart(more.start(more.list(to).get(0)));
            return more.text().substring(0, line)
                    + indented(item.above(), indent(more, to))
                    + more.text().substring(line);
        }
        boolean last = place >= items.size();
        int at = last ? file.lineEnd(file.end(items.get(items.size() - 1))) : above(file, to, place);
        String indent = indent(file, to);
        String lines = indented(item.above() + "- " + item.text() + behind + "\n", indent);
        return file.insertLine(at, lines.substring(0, lines.length() - 1));
    }

    private static boolean inBraces(YamlEdit file, List<String> to) {
        return file.node(to).isPresent() || YamlEdit.flow(file.node(to.subList(0, to.size() - 1)));
    }

    /** Comments above the line on which a list in brackets begins. */
    private static String commented(YamlEdit file, List<String> to, String comments) {
        int start = file.start(file.node(to).orElseThrow());
        int line = file.lineStart(start);
        String written = file.text().substring(line, start);
        String indent =
                written.substring(0, written.length() - written.stripLeading().length());
        return file.text().substring(0, line)
                + indented(comments, indent)
                + file.text().substring(line);
    }

    private static String indented(String lines, String indent) {
        return lines.isEmpty() ? lines : lines.replaceAll("(?m)^(?=.)", indent);
    }

    /** What stands before the dashes of a list. */
    private static String indent(YamlEdit file, List<String> list) {
        int first = file.start(file.list(list).get(0));
        String line = file.text().substring(file.lineStart(first), first);
        return line.substring(0, line.indexOf('-'));
    }
}
