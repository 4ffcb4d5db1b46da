package org.bookholder.course.page;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.course.edit.BurnDown;

/** Lessons left over the weeks as a plot (SVG): the plan dashed, what came of it solid, each with its name at its end. */
final class BurnDownPlot {
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

    static String of(BurnDown burnDown) {
        int weeks =
                Math.max(2, Math.max(burnDown.planned().size(), burnDown.real().size())) - 1;
        BurnDownPlot plot =
                new BurnDownPlot(weeks, Math.max(1, burnDown.planned().get(0)));
        LocalDate end = burnDown.from().plusWeeks(weeks);
        String forecast = burnDown.forecast()
                .map(day -> "Forecast: " + day + ", " + burnDown.speedFrom() + ".")
                .orElse("No forecast: " + burnDown.speedFrom() + ".");
        return "<p>Lessons left to edit, week by week</p>\n"
                + String.format(
                        Locale.ROOT,
                        "<svg viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"Lessons left to edit, week by week\">\n",
                        LEFT + WIDTH + 60,
                        TOP + HEIGHT + 30)
                + String.format(
                        Locale.ROOT,
                        "<path d=\"M%d %dV%dH%d\" fill=\"none\" stroke=\"var(--rule)\"/>\n",
                        LEFT,
                        TOP,
                        TOP + HEIGHT,
                        LEFT + WIDTH)
                + text(LEFT - 8, plot.y(burnDown.planned().get(0)) + 4, "end", String.valueOf(plot.lessons))
                + text(LEFT - 8, TOP + HEIGHT + 4, "end", "0")
                + text(LEFT, TOP + HEIGHT + 22, "start", burnDown.from().toString())
                + text(LEFT + WIDTH, TOP + HEIGHT + 22, "end", end.toString())
                + plot.line(burnDown.planned(), "plan", "stroke=\"var(--quiet)\" stroke-dasharray=\"6 5\"")
                + plot.line(burnDown.real(), "real", "stroke=\"var(--done)\" stroke-width=\"3\"")
                + "</svg>\n<p>" + CoursePage.escape(forecast) + "</p>\n";
    }

    private String line(List<Integer> left, String name, String look) {
        if (left.isEmpty()) {
            return "";
        }
        String points = IntStream.range(0, left.size())
                .mapToObj(week -> x(week) + "," + y(left.get(week)))
                .collect(Collectors.joining(" "));
        int last = left.size() - 1;
        return "<polyline points=\"" + points + "\" fill=\"none\" " + look + "/>\n"
                + text(x(last) + 6, y(left.get(last)) - 6, "start", name);
    }

    private static String text(int x, int y, String anchor, String text) {
        return String.format(Locale.ROOT, "<text x=\"%d\" y=\"%d\" text-anchor=\"%s\">%s</text>\n", x, y, anchor, text);
    }

    private int x(int week) {
        return LEFT + WIDTH * week / weeks;
    }

    private int y(int left) {
        return TOP + HEIGHT - HEIGHT * left / lessons;
    }
}
