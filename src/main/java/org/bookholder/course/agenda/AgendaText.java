package org.bookholder.course.agenda;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.course.Text;

/** The work of a day as a text for a terminal of 80 columns. */
public final class AgendaText {
    private static final int WIDTH = 80;
    private static final String INDENT = "     ";

    private AgendaText() {}

    /** The text, line by line. */
    public static List<String> of(Agenda agenda) {
        List<String> out = new ArrayList<>(Text.wrap(agenda.headline()));
        int number = 0;
        for (AgendaItem item : agenda.items()) {
            indented(String.format(Locale.ROOT, "%3d. ", ++number), item.text(), out);
            if (!item.why().isEmpty()) {
                indented(INDENT, "Why: " + String.join("; ", item.why()) + ".", out);
            }
        }
        if (!agenda.why().isEmpty()) {
            out.addAll(Text.wrap("Why today: " + String.join(" ", agenda.why())));
        }
        out.addAll(Text.wrap(agenda.launch()));
        return out;
    }

    private static void indented(String first, String text, List<String> out) {
        List<String> rows = Text.wrap(text, WIDTH - INDENT.length());
        out.add(first + rows.get(0));
        rows.stream().skip(1).forEach(more -> out.add(INDENT + more));
    }
}
