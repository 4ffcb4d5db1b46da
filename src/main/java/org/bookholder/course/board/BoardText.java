package org.bookholder.course.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.bookholder.course.Text;
import org.bookholder.wording.PaceText;

/** The board as a text for a terminal of 80 columns. */
public final class BoardText {
    private static final int WIDTH = 80;

    /** Width of a row apart from title, state and next step: number, words, running time and gaps. */
    private static final int FIGURES = 23;

    private static final int LEAST_TITLE = 20;
    private static final int LEAST_NEXT = 24;
    private static final int AHEAD = 3;

    private BoardText() {}

    /** Where the running times come from. */
    public static String runs(Board board) {
        String measured = board.measured().pace().isPresent()
                ? String.format(
                        Locale.ROOT,
                        "a blend of the target and the pace at which you read (%.0f words a minute)",
                        board.measured().pace().getAsDouble())
                : "the target";
        return "Runs: the words at " + measured + ", pauses included. "
                + PaceText.targets(board.lessons().stream()
                        .map(state -> state.lesson().script().settings())
                        .map(set -> PaceText.target(set.targetPace(), set.paceSource()))
                        .toList())
                + " " + PaceText.RULE + " " + PaceText.ORDINARY;
    }

    /** The text, line by line. */
    public static List<String> of(Board board) {
        List<String> out = new ArrayList<>();
        out.add(board.course().title());
        table(board, out);
        out.add("");
        board.next()
                .ifPresent(
                        state -> out.addAll(Text.wrap("Next: " + state.lesson().name() + ": " + state.next())));
        facts(board, out);
        gate(board, out);
        out.add("");
        out.addAll(Text.wrap(runs(board)));
        return out;
    }

    /** Titles are cut only where the next steps need their room. */
    private static void table(Board board, List<String> out) {
        int state = longest(board, s -> s.stage().label(), "state");
        int room = WIDTH - FIGURES - state;
        int next = Math.min(longest(board, LessonState::next, "next"), Math.max(LEAST_NEXT, room - titles(board)));
        int title = Math.max(LEAST_TITLE, Math.min(titles(board), room - next));
        String row = "%3s %s %6s %7s  %-" + state + "s  %s";
        out.add(String.format(Locale.ROOT, row, "", Text.fit("lesson", title), "words", "runs", "state", "next"));
        int words = 0;
        double seconds = 0;
        for (ModuleState module : board.modules()) {
            module.module().ifPresent(known -> out.addAll(heading(module)));
            for (LessonState lesson : module.lessons()) {
                words += lesson.lesson().script().spokenWords();
                seconds += lesson.seconds();
                List<String> steps = Text.wrap(lesson.next(), room - title);
                out.add(String.format(
                                Locale.ROOT,
                                row,
                                lesson.lesson().number(),
                                Text.fit(lesson.lesson().title(), title),
                                lesson.lesson().script().spokenWords(),
                                Text.clock(lesson.seconds()),
                                lesson.stage().label(),
                                steps.get(0))
                        .stripTrailing());
                steps.stream().skip(1).forEach(more -> out.add(" ".repeat(WIDTH - room + title) + more));
            }
        }
        out.add(String.format(Locale.ROOT, row, "", Text.fit("in all", title), words, Text.clock(seconds), "", "")
                .stripTrailing());
    }

    private static int titles(Board board) {
        return longest(board, state -> state.lesson().title(), "lesson");
    }

    private static int longest(Board board, Function<LessonState, String> column, String head) {
        return Math.max(
                head.length(),
                board.lessons().stream()
                        .mapToInt(state -> column.apply(state).length())
                        .max()
                        .orElse(0));
    }

    private static void facts(Board board, List<String> out) {
        for (DueFact due : board.due()) {
            out.addAll(Text.wrap(
                    "To check, due " + due.fact().due() + ": \"" + due.fact().text() + "\" in "
                            + due.lesson().name() + ", line " + due.fact().line()));
            out.add("  " + Text.cut(due.text(), WIDTH - 2));
            out.add(Text.cut(
                    due.files().isEmpty() ? "  not exported yet" : "  said in " + String.join(", ", due.files()),
                    WIDTH));
        }
        if (!board.due().isEmpty()) {
            out.addAll(Text.wrap(
                    "Still right? Say so with --checked LESSON:LINE. If not, change the script: the line is then to be"
                            + " recorded again. To be reminded again, write a new date behind check: in the script."));
        }
        for (DueFact fact : board.lookedAt()) {
            out.addAll(Text.wrap("Looked at on " + fact.lookedOn() + " and still right: \""
                    + fact.fact().text() + "\" in " + fact.lesson().name() + ", line "
                    + fact.fact().line()));
        }
        List<DueFact> ageing = board.ageing();
        if (!ageing.isEmpty()) {
            out.addAll(Text.wrap("Ageing: "
                    + ageing.stream()
                            .limit(AHEAD)
                            .map(d -> "\"" + d.fact().text() + "\" in "
                                    + d.lesson().name() + " on " + d.fact().due())
                            .collect(Collectors.joining(", "))
                    + (ageing.size() > AHEAD ? " and " + (ageing.size() - AHEAD) + " more" : "")));
        }
    }

    private static void gate(Board board, List<String> out) {
        if (board.finished()) {
            out.add("The course is finished: every lesson is recorded, edited, exported and checked.");
            board.course().launch().ifPresent(day -> out.add("It can go out; you hoped for " + day + "."));
            return;
        }
        out.add("Not finished. Promise nobody a date before it is; missing are:");
        for (DueFact due : board.due()) {
            indented(
                    "a look at \"" + due.fact().text() + "\" in " + due.lesson().name() + ", line "
                            + due.fact().line() + ": due since " + due.fact().due(),
                    out);
        }
        for (ModuleState module : board.modules()) {
            module.module().ifPresent(known -> out.addAll(heading(module)));
            for (LessonState state : module.lessons()) {
                List<String> missing = state.missing();
                if (!missing.isEmpty()) {
                    indented(state.lesson().name() + ": " + String.join(", ", missing), out);
                }
            }
        }
    }

    private static void indented(String text, List<String> out) {
        List<String> rows = Text.wrap(text, WIDTH - 4);
        out.add("  " + rows.get(0));
        rows.stream().skip(1).forEach(more -> out.add("    " + more));
    }

    /** For example "Module 2: Knots (1:02:10), 2 of 6 lessons can go out". */
    private static List<String> heading(ModuleState module) {
        String length = module.lessons().isEmpty() ? "" : " (" + Text.clock(module.seconds()) + ")";
        return Text.wrap(module.heading() + length + ", " + module.standing());
    }
}
