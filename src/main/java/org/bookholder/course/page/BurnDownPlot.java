package org.bookholder.course.page;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.bookholder.course.edit.BurnDown;

/**
 * Draws the lessons left over the weeks as a plot (SVG): the plan as a dashed line, reality as a solid one, each named
 * at its end.
 */
final class BurnDownPlot {
    private static final String TITLE = "Lessons left to edit, week by week";
    private static final int LEFT = 40;
    private static final int TOP = 20;
    private static final int WIDTH = 640;
    private static final int HEIGHT = 200;

    private final int weeks;
    private final int lessons;

    private BurnDownPlot(int weeks, int lessons) {
        this.weeks = weeks;
        this.lessons = lessons;
    }

    static void write(Markup page, BurnDown burnDown) {
        int weeks =
                Math.max(2, Math.max(burnDown.planned().size(), burnDown.real().size())) - 1;
        BurnDownPlot plot =
                new BurnDownPlot(weeks, Math.max(1, burnDown.planned().get(0)));
        page.element("p", TITLE);
        String size = String.format(Locale.ROOT, "0 0 %d %d", LEFT + WIDTH + 60, TOP + HEIGHT + 30);
        page.open("svg", "viewBox", size, "role", "img", "aria-label", TITLE);
        String axes = String.format(Locale.ROOT, "M%d %dV%dH%d", LEFT, TOP, TOP + HEIGHT, LEFT + WIDTH);
        page.empty("path", "d", axes, "fill", "none", "stroke", "var(--rule)");
        text(page, LEFT - 8, plot.y(burnDown.planned().get(0)) + 4, "end", String.valueOf(plot.lessons));
        text(page, LEFT - 8, TOP + HEIGHT + 4, "end", "0");
        text(page, LEFT, TOP + HEIGHT + 22, "start", burnDown.from().toString());
        LocalDate end = burnDown.from().plusWeeks(weeks);
        text(page, LEFT + WIDTH, TOP + HEIGHT + 22, "end", end.toString());
        plot.line(page, burnDown.planned(), "plan", "stroke", "var(--quiet)", "stroke-dasharray", "6 5");
        plot.line(page, burnDown.real(), "real", "stroke", "var(--done)", "stroke-width", "3");
        page.close();
        page.element(
                "p",
                "Dashed: how many lessons the plan leaves to edit at each date. Solid: how many really were left, up"
                        + " to today.",
                "class",
                "q");
        String forecast = burnDown.forecast()
                .map(day -> "Forecast: " + day + ", " + burnDown.speedFrom() + ".")
                .orElse("No forecast: " + burnDown.speedFrom() + ".");
        page.element("p", forecast);
    }

    private void line(Markup page, List<Integer> left, String name, String... look) {
        if (left.isEmpty()) {
            return;
        }
        String points = IntStream.range(0, left.size())
                .mapToObj(week -> x(week) + "," + y(left.get(week)))
                .collect(Collectors.joining(" "));
        String[] attributes = Stream.concat(Stream.of("points", points, "fill", "none"), Stream.of(look))
                .toArray(String[]::new);
        page.empty("polyline", attributes);
        int last = left.size() - 1;
        text(page, x(last) + 6, y(left.get(last)) - 6, "start", name);
    }

    private static void text(Markup page, int x, int y, String anchor, String text) {
        page.element("text", text, "x", String.valueOf(x), "y", String.valueOf(y), "text-anchor", anchor);
    }

    private int x(int week) {
        return LEFT + WIDTH * week / weeks;
    }

    private int y(int left) {
        return TOP + HEIGHT - HEIGHT * left / lessons;
    }
}
