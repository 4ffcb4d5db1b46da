package org.bookholder.course.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.course.Text;
import org.bookholder.wording.PaceText;

/** The board as a text for a terminal of 80 columns. */
public final class BoardText {
    static final int WIDTH = 80;

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
        out.addAll(BoardTable.of(board));
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

    private static void facts(Board board, List<String> out) {
        for (DueFact due : board.due()) {
            out.addAll(Text.wrap(
                    "To check, due " + due.fact().due() + ": \"" + due.fact().text() + "\" in "
                            + due.lesson().name() + ", line " + due.fact().line()));
            out.add("  " + Text.cut(due.text(), WIDTH - 2));
            out.add(Text.cut("  " + GateText.holding(due), WIDTH));
        }
        if (!board.due().isEmpty()) {
            out.addAll(Text.wrap("Still right? Say so with --checked LESSON:LINE. " + GateText.OUTDATED));
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
        out.addAll(Text.wrap(GateText.headline(board) + ". " + GateText.standing(board)));
        if (board.finished()) {
            board.course().launch().ifPresent(day -> out.add("It can go out; you hoped for " + day + "."));
            return;
        }
        out.addAll(Text.wrap(GateText.caution(board) + " Missing are:"));
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
            BoardTable.unreadable(board, module)
                    .forEach(lesson -> indented(lesson.name() + ": a script that can be read", out));
        }
    }

    private static void indented(String text, List<String> out) {
        List<String> rows = Text.wrap(text, WIDTH - 4);
        out.add("  " + rows.get(0));
        rows.stream().skip(1).forEach(more -> out.add("    " + more));
    }

    /** For example "Module 2: Knots (1:02:10), 2 of 6 lessons can go out". */
    static List<String> heading(ModuleState module) {
        String length = module.lessons().isEmpty() ? "" : " (" + Text.clock(module.seconds()) + ")";
        return Text.wrap(module.heading() + length + ", " + module.standing());
    }
}
