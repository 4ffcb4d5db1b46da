package org.bookholder.course.page;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.bookholder.course.versions.LessonHistory;
import org.bookholder.session.LineChanges;

/** The history of a lesson as a page. */
public final class HistoryPage {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private HistoryPage() {}

    /** The whole page; times of day are those of a time zone. */
    public static String of(LessonHistory history, ZoneId zone) {
        return PaperPage.of("Versions: " + history.title(), page -> write(page, history, zone));
    }

    /** The same for use within another page. */
    public static String fragment(LessonHistory history, ZoneId zone) {
        return PaperPage.fragment(page -> write(page, history, zone));
    }

    private static void write(Markup page, LessonHistory history, ZoneId zone) {
        page.element("h1", "Versions: " + history.title());
        page.open("table");
        for (LessonHistory.Entry entry : history.entries()) {
            page.open("tr").open("td", "class", "when");
            page.text(PaperPage.day(LocalDate.ofInstant(entry.when(), zone)) + ", "
                            + TIME.format(entry.when().atZone(zone)))
                    .close();
            page.element("td", entry.kind().label(), "class", "q kind")
                    .open("td")
                    .text(entry.what());
            if (!entry.changes().isEmpty()) {
                page.open("ul", "class", "changes");
                entry.changes().forEach(change -> write(page, change));
                page.close();
            }
            page.close().close();
        }
        page.close();
    }

    private static void write(Markup page, LineChanges.Change change) {
        page.open("li").element("span", "Line " + change.line(), "class", "q");
        if (!change.was().isEmpty()) {
            page.element("del", change.was());
        }
        if (!change.is().isEmpty()) {
            page.element("ins", change.is());
        }
        page.close();
    }
}
