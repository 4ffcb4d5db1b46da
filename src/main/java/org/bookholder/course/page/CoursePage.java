package org.bookholder.course.page;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardText;
import org.bookholder.course.board.DueFact;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;

/**
 * The board, the sessions that are left and the edit's burn-down as HTML. Needs no script and nothing from elsewhere.
 */
public final class CoursePage {
    private static final String STYLE = """
        :root { color-scheme: light dark; --paper: #FFFCF5; --ink: #211C17; --quiet: #6B6155; --rule: #DDD3C2;
          --todo: #9A3B1E; --under-way: #8A5800; --done: #2C6B7C }
        @media (prefers-color-scheme: dark) { :root { --paper: #1B1713; --ink: #F6EDDD; --quiet: #B3A797;
          --rule: #453C32; --todo: #E08A6B; --under-way: #E3B25F; --done: #7FB6C4 } }
        @media print { :root { --paper: #FFF; --ink: #000 } }
        body { font: 1rem/1.5 Georgia, serif; background: var(--paper); color: var(--ink); max-width: 60rem;
          margin: 2rem auto; padding: 0 1rem }
        table { border-collapse: collapse; width: 100% }
        th { text-align: left; font-weight: normal; color: var(--quiet) }
        th, td { padding: .35rem .75rem .35rem 0; border-bottom: 1px solid var(--rule); vertical-align: top }
        .n { text-align: right; font-variant-numeric: tabular-nums }
        .s { border-left: .3rem solid var(--todo); padding-left: .6rem; white-space: nowrap }
        .s.u { border-left-color: var(--under-way) } .s.d { border-left-color: var(--done) }
        .q { color: var(--quiet) }
        svg text { fill: var(--ink); font: 13px Georgia, serif }
        """;

    private CoursePage() {}

    /** The whole page. */
    public static String of(Board board, SessionPlan plan, BurnDown burnDown) {
        String title = escape(board.course().title());
        return "<!DOCTYPE html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" + title + "</title>\n<style>\n"
                + STYLE + "</style>\n<main>\n<h1>" + title + "</h1>\n<p class=\"q\">As it stands on " + board.today()
                + "</p>\n" + fragment(board, plan, burnDown) + "</main>\n</html>\n";
    }

    /** What stands below the title, for another page to hold. */
    public static String fragment(Board board, SessionPlan plan, BurnDown burnDown) {
        return gate(board) + lessons(board) + facts(board.due()) + sessions(plan) + "<h2>Edit</h2>\n"
                + BurnDownPlot.of(burnDown) + "<p class=\"q\">" + escape(BoardText.RUNS)
                + " Sessions and weeks are those of <code>bookholder plan</code>, which names the source of each"
                + " figure.</p>\n";
    }

    private static String gate(Board board) {
        return board.finished()
                ? "<p><strong>The course is finished:</strong> every lesson is recorded, edited, exported and"
                        + " checked.</p>\n"
                : "<p><strong>Not finished.</strong> Promise nobody a date before it is.</p>\n";
    }

    private static String lessons(Board board) {
        StringBuilder rows = new StringBuilder();
        for (LessonState state : board.lessons()) {
            List<String> missing = state.missing();
            rows.append(String.format(
                    Locale.ROOT,
                    "<tr><td class=\"n\">%d<td>%s<td class=\"n\">%d<td class=\"n\">%s<td class=\"s %s\">%s<td>%s<td"
                            + " class=\"q\">%s\n",
                    state.lesson().number(),
                    escape(state.lesson().title()),
                    state.lesson().script().spokenWords(),
                    Text.clock(state.seconds()),
                    missing.isEmpty() ? "d" : state.recording().begun() ? "u" : "",
                    state.stage().label(),
                    escape(state.next()),
                    escape(String.join(", ", missing))));
        }
        return "<table>\n<tr><th><th>Lesson<th class=\"n\">Words<th class=\"n\">Runs<th>State<th>Next<th>Missing\n"
                + rows + "</table>\n";
    }

    private static String facts(List<DueFact> due) {
        if (due.isEmpty()) {
            return "";
        }
        String rows = due.stream()
                .map(fact -> "<li><strong>" + escape(fact.fact().text()) + "</strong>, due "
                        + fact.fact().due() + ": " + escape(fact.lesson().name()) + ", line "
                        + fact.fact().line() + ": <q>" + escape(fact.text()) + "</q> <span class=\"q\">"
                        + escape(exports(fact)) + "</span>\n")
                .collect(Collectors.joining());
        return "<h2>To check</h2>\n<ul>\n" + rows + "</ul>\n";
    }

    private static String exports(DueFact fact) {
        return fact.exports().isEmpty()
                ? "not exported yet"
                : fact.exports().stream()
                        .map(Path::getFileName)
                        .map(String::valueOf)
                        .collect(Collectors.joining(", ", "said in ", ""));
    }

    private static String sessions(SessionPlan plan) {
        StringBuilder rows = new StringBuilder();
        int number = 0;
        for (PlannedSession session : plan.sessions()) {
            rows.append("<li value=\"").append(++number).append("\">");
            session.date()
                    .ifPresent(day -> rows.append(day)
                            .append(" at ")
                            .append(session.from())
                            .append(", "));
            rows.append(Text.hours(session.length())).append(": ").append(escape(works(session.works())));
            rows.append("\n");
        }
        String left = plan.left().isEmpty()
                ? ""
                : "<p><strong>No place was found for:</strong> " + escape(works(plan.left())) + ". "
                        + escape(String.join("; ", plan.why())) + ".</p>\n";
        return rows.isEmpty() && left.isEmpty() ? "" : "<h2>Recording</h2>\n<ol>\n" + rows + "</ol>\n" + left;
    }

    private static String works(List<RecordingTask> works) {
        return works.stream()
                .map(work -> work.name() + " (" + work.what() + ")")
                .collect(Collectors.joining(", "));
    }

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
