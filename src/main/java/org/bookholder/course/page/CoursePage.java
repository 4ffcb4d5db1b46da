package org.bookholder.course.page;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.bookholder.course.Lesson;
import org.bookholder.course.Text;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardText;
import org.bookholder.course.board.DueFact;
import org.bookholder.course.board.GateText;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.board.ModuleState;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;

/**
 * The board, the remaining sessions and the burn-down of the edit as HTML. The page needs no scripts and no other
 * files.
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
        .module td { padding-top: 1.2rem }
        svg text { fill: var(--ink); font: 13px Georgia, serif }
        """;

    private CoursePage() {}

    /** The whole page. */
    public static String of(Board board, SessionPlan plan, BurnDown burnDown) {
        String title = board.course().title();
        Markup page = new Markup();
        page.open("html", "lang", "en").open("head").empty("meta", "charset", "utf-8");
        page.empty("meta", "name", "viewport", "content", "width=device-width");
        page.element("title", title).element("style", STYLE).close();
        page.open("body").open("main").element("h1", title);
        page.element("p", "As it stands on " + board.today(), "class", "q");
        writeContent(page, board, plan, burnDown);
        page.close().close().close();
        return "<!DOCTYPE html>\n" + page;
    }

    /** The part below the title, for use within another page. */
    public static String fragment(Board board, SessionPlan plan, BurnDown burnDown) {
        Markup page = new Markup();
        writeContent(page, board, plan, burnDown);
        return page.toString();
    }

    private static void writeContent(Markup page, Board board, SessionPlan plan, BurnDown burnDown) {
        writeVerdict(page, board);
        writeLessons(page, board);
        writeFacts(page, board.due());
        writeSessions(page, plan, titles(board));
        page.element("h2", "Edit");
        BurnDownPlot.write(page, burnDown);
        page.open("p", "class", "q").text(BoardText.runs(board) + " Sessions and weeks are those of ");
        page.element("code", "bookholder plan")
                .text(", which names the source of each figure.")
                .close();
    }

    private static void writeVerdict(Markup page, Board board) {
        page.open("p");
        page.element("strong", GateText.headline(board) + ".")
                .text(" " + GateText.standing(board) + " " + GateText.caution(board));
        page.close();
    }

    private static void writeLessons(Markup page, Board board) {
        page.open("table").open("tr").element("th", "").element("th", "Lesson");
        page.element("th", "Words", "class", "n").element("th", "Runs", "class", "n");
        page.element("th", "State")
                .element("th", "Next")
                .element("th", "Missing")
                .close();
        for (ModuleState module : board.modules()) {
            if (module.module().isPresent()) {
                page.open("tr", "class", "module").open("td", "colspan", "7").element("strong", module.heading());
                page.text(" " + Text.clock(module.seconds()) + ", " + module.standing())
                        .close()
                        .close();
            }
            module.lessons().forEach(state -> writeLesson(page, state));
            board.course().unreadable().stream()
                    .filter(lesson -> lesson.module().equals(module.module()))
                    .forEach(lesson -> writeUnreadable(page, lesson));
        }
        page.close();
    }

    private static void writeLesson(Markup page, LessonState state) {
        List<String> missing = state.missing();
        String progress = missing.isEmpty() ? "s d" : state.recording().begun() ? "s u" : "s";
        page.open("tr").element("td", state.lesson().number(), "class", "n");
        page.element("td", state.lesson().title());
        page.element("td", state.lesson().script().spokenWords(), "class", "n");
        page.element("td", Text.clock(state.seconds()), "class", "n");
        page.element("td", state.stage().label(), "class", progress);
        page.element("td", state.next());
        page.element("td", String.join(", ", missing), "class", "q").close();
    }

    private static void writeUnreadable(Markup page, UnreadableLesson lesson) {
        page.open("tr", "class", "unreadable").element("td", lesson.number(), "class", "n");
        page.element("td", lesson.fileName()).element("td", "").element("td", "");
        page.element("td", lesson.state(), "class", "s").element("td", lesson.why());
        page.element("td", "a script that can be read", "class", "q").close();
    }

    private static void writeFacts(Markup page, List<DueFact> due) {
        if (due.isEmpty()) {
            return;
        }
        page.element("h2", "Facts to look at again").open("ul");
        for (DueFact fact : due) {
            page.open("li").element("strong", fact.fact().text());
            page.text(", due " + fact.fact().due() + ": " + fact.lesson().name() + ", line "
                    + fact.fact().line() + ": ");
            page.element("q", fact.text())
                    .text(" ")
                    .element("span", GateText.holding(fact), "class", "q")
                    .close();
        }
        page.close();
    }

    private static void writeSessions(Markup page, SessionPlan plan, Map<String, String> titles) {
        if (plan.sessions().isEmpty() && plan.left().isEmpty()) {
            return;
        }
        page.element("h2", "Recording").open("ol");
        for (PlannedSession session : plan.sessions()) {
            page.open("li");
            session.date().ifPresent(day -> page.text(day + " at " + session.from() + ", "));
            page.text(Text.hours(session.length()) + ": " + works(session.works(), titles))
                    .close();
        }
        page.close();
        if (!plan.left().isEmpty()) {
            page.open("p").element("strong", "No place was found for:");
            page.text(" " + works(plan.left(), titles) + ". " + String.join("; ", plan.why()) + ".")
                    .close();
        }
    }

    /** The lessons' titles by their names. */
    private static Map<String, String> titles(Board board) {
        return board.lessons().stream()
                .map(LessonState::lesson)
                .collect(Collectors.toMap(Lesson::name, Lesson::title, (first, second) -> first));
    }

    private static String works(List<RecordingTask> works, Map<String, String> titles) {
        return works.stream()
                .map(work -> titles.getOrDefault(work.name(), work.name())
                        + (work.what().equals("whole") ? "" : " (" + work.what() + ")"))
                .collect(Collectors.joining("; "));
    }
}
