package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.agenda.Agenda;
import org.bookholder.course.agenda.AgendaBasis;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.board.BoardText;
import org.bookholder.course.board.LessonStage;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.board.ModuleState;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.ListKind;
import org.bookholder.course.shoot.ChosenDays;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.Terms;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A course of 24 lessons in four modules from outlines to finished, day by day in virtual time: an illness, a lesson that is recorded again, and
 * a fact that ages.
 */
final class CourseLifeTest {
    private static final int LINES = 40;
    private static final LocalDate OUTLINED = LocalDate.of(2027, 2, 1);
    private static final List<LocalDate> DAYS = List.of(
            LocalDate.of(2027, 3, 1),
            LocalDate.of(2027, 3, 3),
            LocalDate.of(2027, 3, 5),
            LocalDate.of(2027, 3, 8),
            LocalDate.of(2027, 3, 10),
            LocalDate.of(2027, 3, 12));
    private static final LocalDate ILL = DAYS.get(1);
    private static final String FACT = "It costs [$12](check:2027-06) in any shop here.";

    @TempDir
    private Path folder;

    private CourseFolder files;
    private final Map<String, List<RecordedSession>> sessions = new HashMap<>();

    /** The course on a day. */
    private record Status(Board board, RecordingBacklog works, SessionPlan plan, Terms terms) {
        LessonState lesson(String name) {
            return board.lessons().stream()
                    .filter(state -> state.lesson().name().equals(name))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @BeforeEach
    void outlines() {
        files = new CourseFolder(folder);
        files.file(
                Course.FILE,
                "title: Ropes\nrecording: {hours: 1.75, days: " + DAYS
                        + "}\nediting: {hours a week: 15, lessons a week: 6}\n");
        for (int module = 1; module <= 4; module++) {
            for (int number = 1; number <= 6; number++) {
                files.file(name(module, number) + ".md", "---\ntitle: Part " + number + "\n---\n# What it is about\n");
            }
        }
    }

    @Test
    void goesFromOutlinesToFinished() throws ProblemException {
        for (int number = 1; number <= 6; number++) {
            write(1, number);
        }
        Status begun = status(OUTLINED);
        assertThat(begun.board().modules()).extracting(ModuleState::all).containsExactly(6, 6, 6, 6);
        assertThat(begun.board().course().unreadable())
                .hasSize(18)
                .allMatch(lesson -> lesson.why().contains("no words to read yet"));
        for (int module = 2; module <= 4; module++) {
            for (int number = 1; number <= 6; number++) {
                write(module, number);
            }
        }
        Status written = status(OUTLINED);
        assertThat(written.board().course().unreadable()).isEmpty();
        assertThat(written.board().lessons()).hasSize(24).allMatch(state -> state.stage() == LessonStage.PLANNED);
        assertThat(written.plan().left()).isEmpty();

        recordWithAnIllness(written);
        editAndExport();
        recordOneAgain();
        theFactAges();
    }

    private void recordWithAnIllness(Status before) throws ProblemException {
        List<LocalDate> used = new ArrayList<>();
        for (LocalDate day : DAYS) {
            Status today = status(day);
            Optional<PlannedSession> session = today.plan().sessions().stream()
                    .filter(one -> one.date().filter(day::equals).isPresent())
                    .findFirst();
            if (session.isEmpty() || day.equals(ILL)) {
                continue;
            }
            used.add(day);
            Instant at = day.atTime(LocalTime.of(10, 0)).toInstant(ZoneOffset.UTC);
            for (RecordingTask work : session.get().works()) {
                boolean slip = work.name().equals("2-more-04") && !sessions.containsKey(work.name());
                read(work.name(), at, slip ? "c".repeat(LINES - 1) + "m" : "c".repeat(LINES));
                at = at.plus(work.length());
            }
            if (day.equals(DAYS.get(2))) {
                assertThat(lost(ILL.plusDays(1))).as("told from the day after").isPresent();
            }
        }
        assertThat(used).doesNotContain(ILL).contains(DAYS.get(2));
        assertThat(before.plan().sessions())
                .extracting(one -> one.date().orElseThrow())
                .contains(ILL);
        Status after = status(DAYS.get(DAYS.size() - 1).plusDays(1));
        assertThat(after.works().works()).isEmpty();
        assertThat(after.board().lessons()).allMatch(state -> state.stage() == LessonStage.RECORDED);
        assertThat(after.board().finished()).isFalse();
    }

    /** What the illness moved, as it was said on a day with what had been recorded until then. */
    private Optional<PlanChange> lost(LocalDate day) throws ProblemException {
        Map<String, List<RecordedSession>> all = new HashMap<>(sessions);
        sessions.replaceAll((name, read) -> read.stream()
                .filter(one -> one.began().isBefore(day.atStartOfDay().toInstant(ZoneOffset.UTC)))
                .toList());
        Status then = status(day);
        Optional<PlanChange> change = PlanChange.byLostDays(
                ChosenDays::plan,
                then.works().works(),
                then.board().course().shooting(),
                then.terms(),
                Optional.of(DAYS.get(0)),
                day,
                then.plan());
        sessions.clear();
        sessions.putAll(all);
        assertThat(change.orElseThrow().lost()).containsExactly(ILL);
        assertThat(change.get().moves()).isNotEmpty().allMatch(move -> move.to().isPresent());
        assertThat(change.get().sentences(name -> name).get(0)).startsWith("Nothing was recorded on " + ILL);
        sessions.replaceAll((name, read) -> read.stream()
                .filter(one -> one.began().isBefore(day.atStartOfDay().toInstant(ZoneOffset.UTC)))
                .toList());
        Agenda agenda = agenda(DAYS.get(2), change);
        assertThat(agenda.headline()).startsWith("Today: record ");
        assertThat(agenda.why()).contains("Nothing was recorded on " + ILL + ", so the plan goes on from today.");
        assertThat(agenda.items()).anyMatch(item -> item.text().startsWith("Edit "));
        sessions.clear();
        sessions.putAll(all);
        return change;
    }

    private void editAndExport() throws ProblemException {
        LocalDate day = LocalDate.of(2027, 3, 15);
        double expected = left(day);
        for (Lesson lesson : files.read().lessons()) {
            Instant at = day.atTime(18, 0).toInstant(ZoneOffset.UTC);
            EditingProgress.read(folder).edited(at, lesson, true, 1.5).write(folder);
            Path film = files.export(lesson.name() + ".mp4", at.plus(Duration.ofHours(1)));
            ExportChecks.keep(folder, film, at.plus(Duration.ofHours(2)), List.of());
            if (lesson.number() == 6) {
                // Six took half as long again as published, so that the rest is expected to take longer, too.
                assertThat(left(day)).isGreaterThan(expected * 18 / 24 * 1.2);
                assertThat(status(day).board().modules().get(0).standing()).isEqualTo("all can go out");
                assertThat(BurnDown.of(tasks(day), files.read().editing(), day).forecast())
                        .isPresent();
            }
            day = lesson.number() % 6 == 0 ? day.plusWeeks(1) : day;
        }
        assertThat(left(day)).isZero();
        assertThat(status(day).board().finished()).isTrue();
    }

    private void recordOneAgain() throws ProblemException {
        LocalDate day = LocalDate.of(2027, 4, 20);
        read("3-bends-02", day.atTime(10, 0).toInstant(ZoneOffset.UTC), "c".repeat(LINES));
        Status again = status(day);
        assertThat(again.board().finished()).isFalse();
        assertThat(again.board().next().orElseThrow().lesson().name()).isEqualTo("3-bends-02");
        assertThat(again.lesson("3-bends-02").next()).isEqualTo("edit it again: it was recorded since");
        assertThat(agenda(day, Optional.empty()).items())
                .singleElement()
                .satisfies(item -> assertThat(item.why()).contains("recorded again since its film, on " + day));
        Path film = files.export("3-bends-02.mp4", day.atTime(18, 0).toInstant(ZoneOffset.UTC));
        assertThat(status(day).lesson("3-bends-02").next()).isEqualTo("check 3-bends-02.mp4");
        ExportChecks.keep(folder, film, day.atTime(19, 0).toInstant(ZoneOffset.UTC), List.of());
        assertThat(status(day).board().finished()).isTrue();
    }

    private void theFactAges() throws ProblemException {
        files.file("exports/1-start-03.vtt", "WEBVTT\n\n00:01.000 --> 00:04.000\nIt costs $12\nin any shop here.\n");
        LocalDate day = LocalDate.of(2027, 6, 1);
        assertThat(status(day.minusDays(1)).board().finished()).isTrue();
        Board due = status(day).board();
        assertThat(due.finished()).isFalse();
        assertThat(BoardText.of(due))
                .contains(
                        "To check, due 2027-06-01: \"$12\" in 1-start-03, line 1",
                        "  Said in 1-start-03.mp4, 1-start-03.vtt.",
                        "  a look at \"$12\" in 1-start-03, line 1: due since 2027-06-01");
        assertThat(agenda(day, Optional.empty()).items())
                .singleElement()
                .satisfies(item -> assertThat(item.why())
                        .contains("due for a check since " + day, "it is said in 1-start-03.mp4, 1-start-03.vtt"));
        Lesson lesson = due.due().get(0).lesson();
        FactChecks.read(folder)
                .decided(
                        day.atTime(9, 0).toInstant(ZoneOffset.UTC),
                        lesson,
                        lesson.script().facts().get(0),
                        true)
                .write(folder);
        Board finished = status(day).board();
        assertThat(finished.finished()).isTrue();
        assertThat(agenda(day, Optional.empty()).headline())
                .isEqualTo("Nothing is left to do: every lesson can go out.");
        assertThat(finished.lessons()).allMatch(state -> state.stage() == LessonStage.CHECKED);
    }

    private static String name(int module, int number) {
        return List.of("1-start", "2-more", "3-bends", "4-hitches").get(module - 1) + "/0" + number;
    }

    private void write(int module, int number) {
        boolean fact = module == 1 && number == 3;
        StringBuilder text = new StringBuilder("---\ntitle: Part " + number + "\n---\n");
        for (int line = 1; line <= LINES; line++) {
            String place = name(module, number).replaceAll("\\D", " ");
            text.append(
                            line == 1 && fact
                                    ? FACT
                                    : "Take the rope of lesson" + place + "in hand for step number " + line + ".")
                    .append('\n');
        }
        files.file(name(module, number) + ".md", text.toString());
    }

    private void read(String name, Instant at, String outcomes) throws ProblemException {
        Lesson lesson = files.read().lesson(name).orElseThrow();
        sessions.computeIfAbsent(name, none -> new ArrayList<>()).add(Sessions.of(lesson.script(), at, outcomes));
    }

    private Status status(LocalDate today) throws ProblemException {
        Course course = CourseReader.readable(folder);
        Map<Lesson, List<RecordedSession>> read = new HashMap<>();
        course.lessons().forEach(lesson -> read.put(lesson, sessions.getOrDefault(lesson.name(), List.of())));
        Board board = BoardReader.read(course, read, today);
        RecordingBacklog works = RecordingBacklog.of(board);
        Terms terms = Terms.of(FatigueLimits.defaults(), course.shooting().setUp());
        SessionPlan plan = ChosenDays.plan(works.works(), course.shooting(), terms, today);
        return new Status(board.planned(plan::day), works, plan, terms);
    }

    /** What there is to do on a day; nothing is asked for the launch. */
    private Agenda agenda(LocalDate day, Optional<PlanChange> lost) throws ProblemException {
        Status status = status(day);
        List<LessonState> order = status.plan().sessions().stream()
                .limit(1)
                .flatMap(session -> session.works().stream())
                .map(work -> status.board().lessons().get(work.lesson() - 1))
                .toList();
        return Agenda.of(new AgendaBasis(
                status.board(),
                status.works(),
                status.plan(),
                status.terms(),
                new CourseList(ListKind.LAUNCH, List.of(), List.of()),
                lost,
                ZoneOffset.UTC,
                new AgendaBasis.Order(order, List.of(), false)));
    }

    private List<EditTask> tasks(LocalDate day) throws ProblemException {
        return EditTasks.of(status(day).board(), ZoneOffset.UTC);
    }

    private double left(LocalDate day) throws ProblemException {
        return tasks(day).stream().mapToDouble(EditTask::left).sum();
    }
}
