package org.bookholder.course.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.bookholder.course.Text;
import org.bookholder.course.UnreadableLesson;

/** The lessons of a board as rows of text, each with its next step; titles are cut only where the next steps need their room. */
final class BoardTable {
    /** Width of a row apart from title, state and next step: number, words, running time and gaps. */
    private static final int FIGURES = 23;

    private static final int LEAST_TITLE = 20;
    private static final int LEAST_NEXT = 24;

    private final Board board;
    private final List<String> out = new ArrayList<>();
    private final int title;
    private final int room;
    private final String form;

    private BoardTable(Board board) {
        this.board = board;
        int state = longest(
                "state",
                board.lessons().stream().map(lesson -> lesson.stage().label()),
                board.course().unreadable().stream().map(UnreadableLesson::state));
        int titles = longest(
                "lesson",
                board.lessons().stream().map(lesson -> lesson.lesson().title()),
                board.course().unreadable().stream().map(UnreadableLesson::fileName));
        int steps = longest(
                "next",
                board.lessons().stream().map(LessonState::next),
                board.course().unreadable().stream().map(UnreadableLesson::why));
        room = BoardText.WIDTH - FIGURES - state;
        int next = Math.min(steps, Math.max(LEAST_NEXT, room - titles));
        title = Math.max(LEAST_TITLE, Math.min(titles, room - next));
        form = "%3s %s %6s %7s  %-" + state + "s  %s";
    }

    /** The rows, with a heading above each module. */
    static List<String> of(Board board) {
        return new BoardTable(board).rows();
    }

    /** The lessons of a module that can't be read, in order. */
    static List<UnreadableLesson> unreadable(Board board, ModuleState module) {
        return board.course().unreadable().stream()
                .filter(lesson -> lesson.module().equals(module.module()))
                .toList();
    }

    private List<String> rows() {
        row("", "lesson", "words", "runs", "state", "next");
        for (ModuleState module : board.modules()) {
            module.module().ifPresent(known -> out.addAll(BoardText.heading(module)));
            SortedMap<Integer, Runnable> rows = new TreeMap<>();
            module.lessons().forEach(state -> rows.put(state.lesson().number(), () -> row(state)));
            unreadable(board, module)
                    .forEach(lesson -> rows.put(
                            lesson.number(),
                            () -> row(lesson.number(), lesson.fileName(), "", "", lesson.state(), lesson.why())));
            rows.values().forEach(Runnable::run);
        }
        int words = board.lessons().stream()
                .mapToInt(state -> state.lesson().script().spokenWords())
                .sum();
        double seconds =
                board.lessons().stream().mapToDouble(LessonState::seconds).sum();
        row("", "in all", words, Text.clock(seconds), "", "");
        return out;
    }

    private void row(LessonState state) {
        row(
                state.lesson().number(),
                state.lesson().title(),
                state.lesson().script().spokenWords(),
                Text.clock(state.seconds()),
                state.stage().label(),
                state.next());
    }

    private void row(Object number, String name, Object words, String runs, String state, String next) {
        List<String> steps = Text.wrap(next, room - title);
        String first = steps.isEmpty() ? "" : steps.get(0);
        out.add(String.format(Locale.ROOT, form, number, Text.fit(name, title), words, runs, state, first)
                .stripTrailing());
        steps.stream().skip(1).forEach(more -> out.add(" ".repeat(BoardText.WIDTH - room + title) + more));
    }

    private static int longest(String head, Stream<String> lessons, Stream<String> unreadable) {
        return Stream.concat(Stream.of(head), Stream.concat(lessons, unreadable))
                .mapToInt(String::length)
                .max()
                .orElseThrow();
    }
}
