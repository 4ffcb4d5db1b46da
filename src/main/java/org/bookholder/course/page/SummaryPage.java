package org.bookholder.course.page;

import org.bookholder.course.offer.CourseSummary;

/** How far a course is, on one page, for somebody who only wants to know that. */
public final class SummaryPage {
    private SummaryPage() {}

    /** The whole page; {@code own} are a person's own words, or an empty text. */
    public static String of(CourseSummary summary, String own) {
        return PaperPage.of(summary.title(), page -> write(page, summary, own));
    }

    /** The same for use within another page. */
    public static String fragment(CourseSummary summary, String own) {
        return PaperPage.fragment(page -> write(page, summary, own));
    }

    private static void write(Markup page, CourseSummary summary, String own) {
        page.element("h1", summary.title());
        page.element("p", "As it stands on " + PaperPage.day(summary.day()), "class", "lead");
        if (!own.isBlank()) {
            page.element("p", own.strip(), "class", "own");
        }
        page.open("p").element("strong", summary.sentence());
        page.text(" " + summary.extent() + "."
                + summary.lastRecorded()
                        .map(day -> " Recorded last on " + PaperPage.day(day) + ".")
                        .orElse(""));
        page.close();
        page.open("table");
        for (CourseSummary.Step step : summary.steps()) {
            page.open("tr").element("td", step.name()).open("td");
            page.element(
                            "progress",
                            "",
                            "max",
                            String.valueOf(Math.max(1, summary.lessons())),
                            "value",
                            String.valueOf(step.done()),
                            "aria-label",
                            step.name())
                    .close();
            page.element("td", step.done() + " of " + summary.lessons(), "class", "n")
                    .close();
        }
        page.close();
        summary.parts().forEach(part -> write(page, part));
        if (!summary.caution().isEmpty()) {
            page.element("p", summary.caution(), "class", "q");
        }
    }

    private static void write(Markup page, CourseSummary.Part part) {
        if (!part.heading().isEmpty()) {
            page.element("h2", part.heading() + ": " + part.ready() + " of " + part.lessons() + " finished");
        }
        if (part.rows().isEmpty()) {
            return;
        }
        page.open("table");
        for (CourseSummary.Row row : part.rows()) {
            page.open("tr").element("td", row.number(), "class", "n number");
            page.element("td", row.title())
                    .element("td", row.standing(), "class", "n")
                    .close();
        }
        page.close();
    }
}
