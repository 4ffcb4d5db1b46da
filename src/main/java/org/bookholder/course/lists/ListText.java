package org.bookholder.course.lists;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.course.Text;
import org.bookholder.course.lists.CourseList.Row;

/** A list as a text for a terminal of 80 columns. Its numbers are by what commands name an item. */
public final class ListText {
    private static final int WIDTH = 80;
    private static final String INDENT = " ".repeat(10);

    private ListText() {}

    /** The text, line by line. */
    public static List<String> of(CourseList list) {
        List<String> out = new ArrayList<>();
        out.add(list.kind().title() + ": " + list.standing());
        out.addAll(Text.wrap(list.kind().about()));
        String heading = "";
        for (int i = 0; i < list.rows().size(); i++) {
            Row row = list.rows().get(i);
            if (row.out()) {
                continue;
            }
            if (!row.item().heading().equals(heading)) {
                heading = row.item().heading();
                out.add("");
                out.add(heading.isEmpty() ? "Your own" : heading);
            }
            write(
                    out,
                    String.format(Locale.ROOT, "%4d [%s] ", i + 1, row.done() ? "x" : " "),
                    row.item().text());
            details(row, out);
        }
        leftOut(list, out);
        return out;
    }

    /** What of a launch list is open, for below the gate; it doesn't keep a course from being finished. */
    public static List<String> gate(CourseList launch) {
        List<String> missing = LaunchList.missing(launch);
        if (missing.isEmpty()) {
            return List.of("What belongs to a launch is all there.");
        }
        List<String> out = new ArrayList<>(Text.wrap("What belongs to a launch, " + launch.standing()
                + "; open (this stops nothing; bookholder lists --list launch shows it):"));
        missing.forEach(one -> write(out, "  ", one));
        return out;
    }

    private static void details(Row row, List<String> out) {
        if (!row.item().detail().isEmpty()) {
            write(out, INDENT, row.item().detail());
        }
        if (!row.remark().isEmpty()) {
            write(out, INDENT, "Remark: " + row.remark());
        }
    }

    private static void write(List<String> out, String first, String text) {
        List<String> rows = Text.wrap(text, WIDTH - first.length());
        for (int i = 0; i < rows.size(); i++) {
            out.add((i == 0 ? first : " ".repeat(first.length())) + rows.get(i));
        }
    }

    private static void leftOut(CourseList list, List<String> out) {
        List<String> parts = list.parts().stream()
                .filter(part -> !part.wanted())
                .map(CourseList.Part::name)
                .toList();
        List<Row> rows = list.leftOut().stream()
                .filter(row -> !parts.contains(row.item().part()))
                .toList();
        if (parts.isEmpty() && rows.isEmpty()) {
            return;
        }
        out.add("");
        out.add("Left out:");
        parts.forEach(part -> out.add("     all of: " + part));
        rows.forEach(row -> write(
                out,
                String.format(Locale.ROOT, "%4d ", list.rows().indexOf(row) + 1),
                (row.item().heading() + ": " + row.item().text()).replaceFirst("^: ", "")));
    }
}
