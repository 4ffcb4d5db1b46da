package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A line of the source with its place.
 *
 * @param text the line
 * @param number its number in the file, from 1
 * @param mark the mark of the list's item that it begins; null if it begins none
 */
record SourceLine(
        MarkedSourceLine text, int number, @Nullable ListMark mark) {
    /** Takes lines apart of which the first opens a bracket that the last closes: the remark becomes one line. */
    static List<SourceLine> closed(List<SourceLine> lines) {
        SourceLine first = lines.get(0);
        SourceLine last = lines.get(lines.size() - 1);
        int from = StageRemarks.openBracket(first.text);
        int to = last.text.text().indexOf(']') + 1;
        StringBuilder remark = new StringBuilder(first.text.text().substring(from));
        for (SourceLine between : lines.subList(1, lines.size() - 1)) {
            remark.append(' ').append(between.text.text());
        }
        remark.append(' ').append(last.text.text(), 0, to);
        List<SourceLine> parts = new ArrayList<>();
        parts.add(new SourceLine(first.text.part(0, from), first.number, first.mark));
        parts.add(new SourceLine(MarkedSourceLine.plain(remark.toString()), first.number, null));
        parts.add(new SourceLine(
                last.text.part(to, last.text.text().length()), last.number, from == 0 ? first.mark : null));
        parts.removeIf(part -> part.text.text().isEmpty());
        return parts;
    }
}
