package org.bookholder.course.page;

import java.time.LocalDate;
import java.util.Locale;
import org.bookholder.course.Text;
import org.bookholder.course.offer.Quotation;

/** A quotation for making a course, as a page to print. */
public final class QuotationPage {
    private static final double SECONDS_PER_MINUTE = 60;

    private QuotationPage() {}

    /** The whole page. */
    public static String of(String course, LocalDate today, Quotation quotation) {
        return PaperPage.of("Quotation: " + course, page -> write(page, course, today, quotation));
    }

    /** The same for use within another page. */
    public static String fragment(String course, LocalDate today, Quotation quotation) {
        return PaperPage.fragment(page -> write(page, course, today, quotation));
    }

    private static void write(Markup page, String course, LocalDate today, Quotation quotation) {
        page.element("h1", "Quotation: " + course);
        page.element("p", PaperPage.day(today), "class", "lead");
        person(page, "For: ", quotation.terms().client());
        person(page, "From: ", quotation.terms().maker());
        page.element(
                "p",
                "A course of " + Text.count(quotation.lessons(), "lesson") + ", "
                        + Text.clock(quotation.minutes() * SECONDS_PER_MINUTE) + " of film.");
        page.open("table").open("tr").element("th", "Work").element("th", "Hours", "class", "n");
        boolean priced = quotation.terms().rate().isPresent();
        if (priced) {
            page.element("th", "Amount", "class", "n");
        }
        page.close();
        for (Quotation.Row row : quotation.rows()) {
            page.open("tr").open("td").text(row.what()).empty("br").element("span", row.from(), "class", "q");
            page.close().element("td", hours(row.hours()), "class", "n");
            if (priced) {
                page.element(
                        "td",
                        quotation.money(row.hours() * quotation.terms().rate().getAsDouble()),
                        "class",
                        "n");
            }
            page.close();
        }
        sums(page, quotation);
        page.close();
        quotation.remarks().forEach(remark -> page.element("p", remark, "class", "q"));
        page.element("p", Quotation.NO_ADVICE, "class", "q");
    }

    private static void sums(Markup page, Quotation quotation) {
        if (quotation.price().isEmpty()) {
            page.open("tr", "class", "sum").element("td", "Hours in all");
            page.element("td", hours(quotation.hours()), "class", "n").close();
            return;
        }
        String rate = "Work, at " + quotation.money(quotation.terms().rate().getAsDouble()) + " an hour";
        sum(
                page,
                rate,
                hours(quotation.hours()),
                quotation.money(quotation.work().getAsDouble()));
        if (quotation.terms().expenses() > 0) {
            String what = quotation.terms().expensesFor();
            page.open("tr").element("td", what.isEmpty() ? "Expenses" : what).element("td", "");
            page.element("td", quotation.money(quotation.terms().expenses()), "class", "n")
                    .close();
        }
        sum(page, "Price", "", quotation.money(quotation.price().getAsDouble()));
    }

    private static void sum(Markup page, String what, String hours, String amount) {
        page.open("tr", "class", "sum").element("td", what).element("td", hours, "class", "n");
        page.element("td", amount, "class", "n").close();
    }

    private static void person(Markup page, String label, String name) {
        if (!name.isEmpty()) {
            page.open("p").element("span", label, "class", "q").text(name).close();
        }
    }

    private static String hours(double hours) {
        return String.format(Locale.ROOT, "%.1f", hours);
    }
}
