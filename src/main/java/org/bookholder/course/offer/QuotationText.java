package org.bookholder.course.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.course.Text;

/** A quotation as a text for a terminal of 80 columns. */
public final class QuotationText {
    private static final double SECONDS_PER_MINUTE = 60;

    private QuotationText() {}

    /** The text, line by line. */
    public static List<String> of(String course, Quotation quotation) {
        List<String> out = new ArrayList<>();
        out.add("Quotation: " + course);
        if (!quotation.terms().client().isEmpty()) {
            out.add("For: " + quotation.terms().client());
        }
        if (!quotation.terms().maker().isEmpty()) {
            out.add("From: " + quotation.terms().maker());
        }
        out.add(Text.count(quotation.lessons(), "lesson") + ", " + Text.clock(quotation.minutes() * SECONDS_PER_MINUTE)
                + " of film");
        out.add("");
        for (Quotation.Row row : quotation.rows()) {
            String amount = quotation.terms().rate().isPresent()
                    ? quotation.money(row.hours() * quotation.terms().rate().getAsDouble())
                    : "";
            out.add(row(row.what(), hours(row.hours()), amount));
            Text.wrap(row.from(), 50).forEach(line -> out.add("    " + line));
        }
        sums(quotation, out);
        out.add("");
        quotation.remarks().forEach(remark -> out.addAll(Text.wrap(remark)));
        out.addAll(Text.wrap(Quotation.NO_ADVICE));
        return out;
    }

    private static void sums(Quotation quotation, List<String> out) {
        if (quotation.price().isEmpty()) {
            out.add(row("Hours in all", hours(quotation.hours()), ""));
            out.addAll(Text.wrap("For a price, write quotation: and below it hour: with your rate into course.yaml."));
            return;
        }
        out.add(row(
                "Work, at " + quotation.money(quotation.terms().rate().getAsDouble()) + " an hour",
                hours(quotation.hours()),
                quotation.money(quotation.work().getAsDouble())));
        if (quotation.terms().expenses() > 0) {
            String what = quotation.terms().expensesFor();
            out.add(row(
                    what.isEmpty() ? "Expenses" : what,
                    "",
                    quotation.money(quotation.terms().expenses())));
        }
        out.add(row("Price", "", quotation.money(quotation.price().getAsDouble())));
    }

    private static String row(String what, String hours, String amount) {
        return String.format(Locale.ROOT, "  %-48s %6s %16s", Text.cut(what, 48), hours, amount)
                .stripTrailing();
    }

    private static String hours(double hours) {
        return String.format(Locale.ROOT, "%.1f", hours);
    }
}
