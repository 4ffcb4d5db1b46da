package org.bookholder.course.page;

import java.time.LocalDate;
import java.util.List;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.CourseList.Row;

/** Lists of a course on paper, with boxes to tick. */
public final class ListPage {
    private ListPage() {}

    /** The whole page. */
    public static String of(String course, LocalDate today, List<CourseList> lists) {
        return PaperPage.of(course, page -> lists.forEach(list -> write(page, course, today, list)));
    }

    /** One list, for use within another page. */
    public static String fragment(String course, LocalDate today, CourseList list) {
        return PaperPage.fragment(page -> write(page, course, today, list));
    }

    private static void write(Markup page, String course, LocalDate today, CourseList list) {
        page.open("section").element("h1", list.kind().title());
        page.element("p", course + ", " + PaperPage.day(today) + ": " + list.standing(), "class", "lead");
        String heading = "";
        boolean open = false;
        for (Row row : list.shown()) {
            if (!open || !row.item().heading().equals(heading)) {
                if (open) {
                    page.close();
                }
                heading = row.item().heading();
                page.element("h2", heading.isEmpty() ? "Your own" : heading).open("table");
                open = true;
            }
            write(page, row);
        }
        if (open) {
            page.close();
        }
        page.close();
    }

    private static void write(Markup page, Row row) {
        page.open("tr").open("td", "class", "box");
        page.element(
                        "span",
                        "",
                        "class",
                        row.done() ? "x" : "",
                        "role",
                        "img",
                        "aria-label",
                        row.done() ? "done" : "open")
                .close();
        page.open("td").text(row.item().text());
        if (!row.item().detail().isEmpty()) {
            page.empty("br").element("span", PaperPage.dated(row.item().detail()), "class", "q");
        }
        if (!row.remark().isEmpty()) {
            page.empty("br").element("em", row.remark());
        }
        page.close().close();
    }
}
