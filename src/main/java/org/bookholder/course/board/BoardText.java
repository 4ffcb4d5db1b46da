package org.bookholder.course.board;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.course.Text;

/** The board as a text for a terminal of 80 columns. */
public final class BoardText {
    private static final int TITLE = 20;
    private static final int WIDTH = 80;
    private static final int NEXT = WIDTH - TITLE - 36;
    private static final int AHEAD = 3;

    /** Where the running times come from. */
    public static final String RUNS =
            "Runs = words / pace, pauses included, at a blend of your own pace and the target; where none"
                    + " is set that is 100 words a minute (common practice).";

    private BoardText() {}

    /** The text, line by line. */
    public static List<String> of(Board board) {
        List<String> out = new ArrayList<>();
        out.add(board.course().title());
        out.add(String.format(
                Locale.ROOT, "%-" + (TITLE + 4) + "s %6s %7s  %-13s  next", "lesson", "words", "runs", "state"));
        for (LessonState state : board.lessons()) {
            out.add(String.format(
                            Locale.ROOT,
                            "%3d %s %6d %7s  %-13s  %s",
                            state.lesson().number(),
                            Text.fit(state.lesson().title(), TITLE),
                            state.lesson().script().spokenWords(),
                            Text.clock(state.seconds()),
                            state.stage().label(),
                            Text.cut(state.next(), NEXT))
                    .stripTrailing());
        }
        out.add(String.format(
                Locale.ROOT,
                "    %s %6d %7s",
                Text.fit("in all", TITLE),
                board.lessons().stream()
                        .mapToInt(s -> s.lesson().script().spokenWords())
                        .sum(),
                Text.clock(board.lessons().stream()
                        .mapToDouble(LessonState::seconds)
                        .sum())));
        out.add("");
        board.next()
                .ifPresent(
                        state -> out.addAll(Text.wrap("Next: " + state.lesson().name() + ": " + state.next())));
        facts(board, out);
        gate(board, out);
        out.add("");
        out.addAll(Text.wrap(RUNS));
        return out;
    }

    private static void facts(Board board, List<String> out) {
        for (DueFact due : board.due()) {
            out.addAll(Text.wrap(
                    "To check, due " + due.fact().due() + ": \"" + due.fact().text() + "\" in "
                            + due.lesson().name() + ", line " + due.fact().line()));
            out.add("  " + Text.cut(due.text(), WIDTH - 2));
            String exports = due.exports().stream()
                    .map(Path::getFileName)
                    .map(Path::toString)
                    .collect(Collectors.joining(", "));
            out.add(Text.cut(exports.isEmpty() ? "  not exported yet" : "  said in " + exports, WIDTH));
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
        for (LessonState state : board.lessons()) {
            List<String> missing = state.missing();
            if (!missing.isEmpty()) {
                out.add(Text.cut("  " + state.lesson().name() + ": " + String.join(", ", missing), WIDTH));
            }
        }
    }
}
