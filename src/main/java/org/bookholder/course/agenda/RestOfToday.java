package org.bookholder.course.agenda;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.course.Editing;
import org.bookholder.course.ExportCheck;
import org.bookholder.course.Text;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.course.agenda.AgendaItem.Kind;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.DueFact;
import org.bookholder.course.board.LessonStage;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.lists.LaunchList;

/** What there is to do today beside the reading, and why: facts, films, scripts, the plan itself, the launch. */
final class RestOfToday {
    private static final int MOST = 3;

    private final AgendaBasis basis;
    private final Board board;

    RestOfToday(AgendaBasis basis) {
        this.basis = basis;
        this.board = basis.board();
    }

    /** The facts to look at before their lines are read today. */
    List<AgendaItem> factsToRead() {
        return facts(true);
    }

    /** All else, in the order of its urgency. */
    List<AgendaItem> items() {
        List<AgendaItem> items = new ArrayList<>(facts(false));
        days(items);
        films(items);
        scripts(items);
        if (board.finished()) {
            LaunchList.missing(basis.launch())
                    .forEach(missing ->
                            items.add(new AgendaItem(Kind.LAUNCH, "", "For the launch: " + missing, List.of())));
        }
        return items;
    }

    private List<AgendaItem> facts(boolean readToday) {
        return board.due().stream()
                .filter(due -> isReadToday(due) == readToday)
                .map(due -> fact(due, readToday))
                .toList();
    }

    private boolean isReadToday(DueFact due) {
        return basis.toRead().stream()
                .filter(state -> state.lesson().equals(due.lesson()))
                .anyMatch(state -> Stream.of(
                                state.recording().unread(), state.recording().pickups())
                        .anyMatch(lines -> lines.contains(due.fact().line())));
    }

    private static AgendaItem fact(DueFact due, boolean readToday) {
        List<String> why = new ArrayList<>();
        why.add("due for a check since " + due.fact().due());
        if (readToday) {
            why.add("you read its line today, so look before");
        } else if (!due.files().isEmpty()) {
            why.add("it is said in " + String.join(", ", due.files()));
        }
        why.add("the course can\u2019t go out before");
        return new AgendaItem(
                Kind.FACT,
                due.lesson().name(),
                "Look whether " + AgendaBasis.quoted(due.fact().text()) + " still holds, in "
                        + AgendaBasis.quoted(due.lesson().title()) + ", line "
                        + due.fact().line(),
                why);
    }

    /** What only a person can decide about the days. */
    private void days(List<AgendaItem> items) {
        boolean undated = board.course().shooting().days().isEmpty();
        if (undated && !basis.works().works().isEmpty()) {
            items.add(new AgendaItem(
                    Kind.PLAN,
                    "",
                    "Choose the days on which you can record",
                    List.of("before that nobody knows when the course is recorded and edited")));
        }
        List<String> left = basis.plan().left().stream()
                .map(work -> AgendaBasis.quoted(basis.state(work.lesson())))
                .distinct()
                .toList();
        if (!undated && !left.isEmpty()) {
            items.add(new AgendaItem(
                    Kind.PLAN,
                    "",
                    "Find a recording day for " + some(left),
                    basis.plan().why()));
        }
    }

    private static String some(List<String> names) {
        return String.join(", ", names.subList(0, Math.min(MOST, names.size())))
                + (names.size() > MOST ? " and " + (names.size() - MOST) + " more" : "");
    }

    private void films(List<AgendaItem> items) {
        List<AgendaItem> films = new ArrayList<>();
        in(LessonStage.EXPORTED).forEach(state -> films.add(exported(state)));
        in(LessonStage.EDITED).forEach(state -> films.add(edited(state)));
        few(items, films, "And %d more to export, to mend or to check; the board has all");
        few(items, edits(), "And %d more to edit this week; the board has all");
    }

    /** Adds the first of them, and how many there are beside. */
    private static void few(List<AgendaItem> items, List<AgendaItem> all, String more) {
        all.stream().limit(MOST).forEach(items::add);
        if (all.size() > MOST) {
            items.add(new AgendaItem(Kind.FILM, "", String.format(Locale.ROOT, more, all.size() - MOST), List.of()));
        }
    }

    private Stream<LessonState> in(LessonStage stage) {
        return board.lessons().stream().filter(state -> state.stage() == stage);
    }

    private static AgendaItem exported(LessonState state) {
        String file = String.valueOf(state.export().orElseThrow().getFileName());
        int findings = state.check().map(ExportCheck::findings).map(List::size).orElse(0);
        return findings == 0
                ? film(state, "Check " + file + " of ", "", "only its check is missing before it can go out")
                : film(
                        state,
                        "Mend " + file + " of ",
                        ": " + state.check().orElseThrow().findings().get(0),
                        "its check has " + Text.count(findings, "finding"));
    }

    private static AgendaItem edited(LessonState state) {
        return state.exports().isEmpty()
                ? film(state, "Export ", "", "it is edited; only export and check are missing")
                : film(state, "Export ", " again", "its film is older than the last recording");
    }

    private static AgendaItem film(LessonState state, String before, String after, String why) {
        return new AgendaItem(
                Kind.FILM, state.lesson().name(), before + AgendaBasis.quoted(state) + after, List.of(why));
    }

    /** What the plan has for the seven days from today on. */
    private List<AgendaItem> edits() {
        List<EditTask> tasks = EditTasks.of(board, basis.zone());
        List<LessonState> ready = in(LessonStage.RECORDED).toList();
        if (ready.isEmpty()) {
            return List.of();
        }
        Optional<LocalDate> from = board.course().editing().from().filter(basis.today()::isBefore);
        if (from.isPresent()) {
            return List.of(new AgendaItem(
                    Kind.FILM,
                    "",
                    "Nothing to edit yet: editing begins on " + from.get(),
                    List.of("that day is set for the course; "
                            + some(ready.stream().map(AgendaBasis::quoted).toList())
                            + (ready.size() == 1 ? " waits" : " wait"))));
        }
        Editing editing = board.course().editing();
        List<String> names = BurnDown.of(tasks, editing, basis.today()).week(tasks, editing, basis.today()).stream()
                .flatMap(week -> Stream.concat(week.finished().stream(), Stream.of(week.begun())))
                .toList();
        List<AgendaItem> items = new ArrayList<>();
        for (String name : names) {
            ready.stream()
                    .filter(state -> state.lesson().name().equals(name))
                    .findFirst()
                    .ifPresent(state -> items.add(edit(state, hours(tasks, name), items.isEmpty())));
        }
        return items;
    }

    private static double hours(List<EditTask> tasks, String name) {
        return tasks.stream()
                .filter(task -> task.name().equals(name))
                .mapToDouble(EditTask::left)
                .sum();
    }

    private AgendaItem edit(LessonState state, double hours, boolean first) {
        List<String> why = new ArrayList<>();
        state.recording()
                .last()
                .ifPresent(when ->
                        why.add((state.exports().isEmpty() ? "recorded on " : "recorded again since its film, on ")
                                + LocalDate.ofInstant(when, basis.zone())));
        why.add(first ? "the first recorded lesson that is not edited" : "the plan has room for it this week, too");
        String length = String.format(Locale.ROOT, ", about %.1f h", Math.max(0.1, hours));
        return new AgendaItem(
                Kind.FILM,
                state.lesson().name(),
                (state.drafted() ? "Look through the draft of " : "Edit ")
                        + AgendaBasis.quoted(state)
                        + (state.drafted() ? " and make its film" : "")
                        + length,
                why);
    }

    private void scripts(List<AgendaItem> items) {
        List<UnreadableLesson> unreadable = board.course().unreadable();
        unreadable.stream()
                .filter(lesson -> !lesson.unwritten())
                .limit(MOST)
                .forEach(lesson -> items.add(new AgendaItem(
                        Kind.SCRIPT, "", "Mend the script " + lesson.fileName(), List.of(lesson.why()))));
        List<String> unwritten = unreadable.stream()
                .filter(UnreadableLesson::unwritten)
                .map(UnreadableLesson::fileName)
                .toList();
        if (!unwritten.isEmpty()) {
            items.add(new AgendaItem(
                    Kind.SCRIPT,
                    "",
                    "Write " + some(unwritten),
                    List.of("a lesson has no place in the plan before it has words to read")));
        }
    }
}
