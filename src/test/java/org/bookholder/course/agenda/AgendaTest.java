package org.bookholder.course.agenda;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.CourseReader;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.ExportChecks;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Sessions;
import org.bookholder.course.agenda.AgendaItem.Kind;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.LaunchList;
import org.bookholder.course.lists.ListKind;
import org.bookholder.course.lists.ListMarks;
import org.bookholder.course.shoot.ChosenDays;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.Terms;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a day is for, and why. Each lesson has twenty lines of eleven words: four minutes before the camera at 100 words a minute. */
final class AgendaTest {
    /** A Tuesday. */
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 9);

    private static final String DAYS = "recording: {set-up: 17, hours: 0.5, days: [2027-03-09, 2027-03-11]}\n";
    private static final int LINES = 20;

    @TempDir
    private Path folder;

    private CourseFolder files;
    private final Map<String, List<RecordedSession>> sessions = new HashMap<>();

    @BeforeEach
    void lessons() {
        files = new CourseFolder(folder);
        course(DAYS);
        for (String name : List.of("hub", "rim", "spoke", "tyre")) {
            lesson(name, "");
        }
    }

    private void course(String more) {
        files.file(Course.FILE, "title: Wheels\npace: 100\n" + more);
    }

    private void lesson(String name, String last) {
        StringBuilder text = new StringBuilder("---\ntitle: The " + name + "\n---\n");
        for (int line = 1; line <= LINES; line++) {
            text.append("Take the ")
                    .append(name)
                    .append(" in hand for step number ")
                    .append(line)
                    .append(" of it.\n");
        }
        files.file(name + ".md", text + last);
    }

    @Test
    void aRecordingDaySaysWhatIsReadAndWhyNoMore() throws ProblemException {
        Agenda agenda = agenda(TODAY);
        assertThat(agenda.headline())
                .isEqualTo(
                        "Today: record 3 lessons (12 min before the camera; with set-up and breaks from 10:00 to 10:29).");
        assertThat(agenda.items()).extracting(AgendaItem::kind).containsOnly(Kind.READ);
        assertThat(agenda.items())
                .extracting(AgendaItem::text)
                .containsExactly(
                        "Record \u201cThe hub\u201d, 4 min",
                        "Record \u201cThe rim\u201d, 4 min",
                        "Record \u201cThe spoke\u201d, 4 min");
        assertThat(agenda.items().get(0).why()).containsExactly("next in the course\u2019s order");
        assertThat(agenda.why())
                .containsExactly(
                        "Today is one of your recording days, from 10:00 for 30 min.",
                        "No other lesson fits into the day: 1 min is left, and the shortest of the others takes 4 min.",
                        "Then 3 of 4 lessons are recorded, and what you read today can be edited from 2027-03-10 on.");
    }

    @Test
    void eachReasonThatHoldsIsGiven() throws ProblemException {
        course("""
                recording: {set-up: 5, hours: 1, days: [2027-03-05, {day: 2027-03-09, lessons: [tyre.md]}]}
                kinds: {rim.md: slides, tyre.md: slides}
                """);
        read("hub", TODAY.minusDays(6), "c".repeat(LINES - 1) + "m");
        Agenda agenda = agenda(TODAY);
        assertThat(agenda.items())
                .filteredOn(item -> item.lesson().equals("hub"))
                .singleElement()
                .satisfies(item -> {
                    assertThat(item.text()).startsWith("Pick up 1 line in \u201cThe hub\u201d");
                    assertThat(item.why())
                            .contains(
                                    "it was to be read on 2027-03-05, when nothing was recorded",
                                    "only this pickup keeps it from its edit");
                });
        assertThat(agenda.why("tyre").orElseThrow())
                .contains("you put it on this day")
                .contains("set-up");
        assertThat(agenda.why())
                .contains(
                        "Nothing was recorded on 2027-03-05, so the plan goes on from today.",
                        "It is all that is left to record.",
                        "Then every lesson is recorded, and what you read today can be edited from 2027-03-10 on.");
    }

    @Test
    void aLessonThatWasBegunSaysWhenAndHowMuchIsMissing() throws ProblemException {
        read("rim", TODAY.minusDays(4), "c".repeat(LINES - 5));
        assertThat(agenda(TODAY).items())
                .filteredOn(item -> item.lesson().equals("rim"))
                .singleElement()
                .satisfies(item -> {
                    assertThat(item.text()).startsWith("Record what is missing of \u201cThe rim\u201d");
                    assertThat(item.why()).contains("begun on 2027-03-05; 5 lines are missing");
                });
    }

    @Test
    void aFactIsLookedAtBeforeItsLineIsRead() throws ProblemException {
        lesson("hub", "It costs [$12](check:2027-02) in any shop here.\n");
        AgendaItem first = agenda(TODAY).items().get(0);
        assertThat(first.kind()).isEqualTo(Kind.FACT);
        assertThat(first.text()).isEqualTo("Look whether \u201c$12\u201d still holds, in \u201cThe hub\u201d, line 21");
        assertThat(first.why())
                .containsExactly(
                        "due for a check since 2027-02-01",
                        "you read its line today, so look before",
                        "the course can\u2019t go out before");
    }

    @Test
    void aDayWithoutRecordingSaysWhenTheNextIsAndWhatCanBeDone() throws ProblemException {
        assertThat(agenda(TODAY.minusDays(1)).headline()).endsWith("Nothing else waits today; you can read ahead.");
        lesson("hub", "It costs [$12](check:2027-02) in any shop here.\n");
        read("rim", TODAY, "c".repeat(LINES));
        Agenda agenda = agenda(TODAY.plusDays(1));
        assertThat(agenda.headline())
                .isEqualTo(
                        "Nothing is to be recorded today. The next recording day is 2027-03-11: 3 lessons (9 min before the camera).");
        assertThat(agenda.items())
                .extracting(AgendaItem::text)
                .containsExactly(
                        "Look whether \u201c$12\u201d still holds, in \u201cThe hub\u201d, line 21",
                        "Edit \u201cThe rim\u201d, about 1.0 h");
        assertThat(agenda.items().get(1).why())
                .containsExactly("recorded on 2027-03-09", "the first recorded lesson that is not edited");
        assertThat(agenda.why()).isEmpty();
    }

    @Test
    void withoutDaysItAsksForThem() throws ProblemException {
        course("");
        Agenda agenda = agenda(TODAY);
        assertThat(agenda.headline())
                .isEqualTo(
                        "No recording day is chosen yet, so any day may be one. Today you could record 4 lessons (16 min before"
                                + " the camera).");
        assertThat(agenda.items()).extracting(AgendaItem::text).endsWith("Choose the days on which you can record");
        assertThat(agenda.launch())
                .startsWith(
                        "Launch: no day is set. Nobody knows yet when the edit will be done: no recording day is chosen.")
                .contains("The day you hope to be ready", "launch: in course.yaml");
    }

    @Test
    void daysThatAreOverOrTooFewAreSaid() throws ProblemException {
        assertThat(agenda(TODAY.plusDays(9)).headline())
                .isEqualTo(
                        "Nothing can be recorded by the plan: all recording days are over, and 4 lessons are still to record"
                                + " (16 min before the camera).");
        course("recording: {set-up: 17, hours: 0.5, days: [2027-03-09]}\n");
        assertThat(agenda(TODAY).items())
                .filteredOn(item -> item.kind() == Kind.PLAN)
                .singleElement()
                .satisfies(item -> {
                    assertThat(item.text()).isEqualTo("Find a recording day for \u201cThe tyre\u201d");
                    assertThat(item.why()).isNotEmpty();
                });
    }

    @Test
    void lessonsToBeWrittenAreNamed() throws ProblemException {
        files.file("valve.md", "---\ntitle: The valve\n---\n# Only an outline\n");
        for (String name : List.of("hub", "rim", "spoke", "tyre")) {
            read(name, TODAY, "c".repeat(LINES));
        }
        Agenda agenda = agenda(TODAY.plusDays(1));
        assertThat(agenda.headline())
                .isEqualTo(
                        "All that is written is recorded; 1 lesson can\u2019t be read yet. Still open: 4 lessons to edit.");
        assertThat(agenda.items())
                .extracting(AgendaItem::text)
                .contains("Write valve.md")
                .filteredOn(text -> text.startsWith("Edit "))
                .hasSize(3);
        assertThat(agenda.launch()).endsWith("1 lesson that can\u2019t be read yet is not counted.");
    }

    @Test
    void filmsAreEditedExportedMendedAndCheckedUntilAllIsFinished() throws ProblemException {
        for (String name : List.of("hub", "rim", "spoke", "tyre")) {
            read(name, TODAY, "c".repeat(LINES));
        }
        Instant later = TODAY.atTime(18, 0).toInstant(ZoneOffset.UTC);
        Course course = files.read();
        EditingProgress.none().edited(later, course.lessons().get(1), true, 1).write(folder);
        files.export("spoke.mp4", later);
        ExportChecks.keep(folder, files.export("tyre.mp4", later), later, List.of("no sound from 0:10 on"));
        Agenda open = agenda(TODAY.plusDays(1));
        assertThat(open.headline())
                .isEqualTo(
                        "Everything is recorded. Still open: 1 lesson to edit, 1 lesson to export, 2 lessons to check.");
        assertThat(open.items())
                .extracting(AgendaItem::text)
                .containsExactly(
                        "Check spoke.mp4 of \u201cThe spoke\u201d",
                        "Mend tyre.mp4 of \u201cThe tyre\u201d: no sound from 0:10 on",
                        "Export \u201cThe rim\u201d",
                        "Edit \u201cThe hub\u201d, about 1.0 h");
        for (String name : List.of("hub", "rim", "spoke", "tyre")) {
            ExportChecks.keep(
                    folder, files.export(name + ".mp4", later.plusSeconds(60)), later.plusSeconds(120), List.of());
        }
        Agenda done = agenda(TODAY.plusDays(1));
        assertThat(done.headline()).startsWith("Nothing is left to do: every lesson can go out.");
        assertThat(done.items()).isNotEmpty().allMatch(item -> item.kind() == Kind.LAUNCH);
        assertThat(done.launch()).isEqualTo("Launch: the course can go out. No launch day is set.");
        read("rim", TODAY.plusDays(2), "c".repeat(LINES));
        assertThat(agenda(TODAY.plusDays(3)).items()).singleElement().satisfies(item -> {
            assertThat(item.text()).isEqualTo("Edit \u201cThe rim\u201d, about 1.0 h");
            assertThat(item.why()).contains("recorded again since its film, on 2027-03-11");
        });
    }

    @Test
    void roomThatIsLeftIsExplained() throws ProblemException {
        course("recording: {set-up: 5, hours: 1, days: [2027-03-09, {day: 2027-03-11, lessons: [tyre.md]}]}\n");
        assertThat(agenda(TODAY).why())
                .anyMatch(
                        why -> why.endsWith(
                                " left; by the plan another lesson today would not make the last recording day, 2027-03-11, any earlier."));
    }

    @Test
    void moreThanThreeFilmsAreCounted() throws ProblemException {
        for (String name : List.of("hub", "rim", "spoke", "tyre")) {
            read(name, TODAY, "c".repeat(LINES));
            files.export(name + ".mp4", TODAY.atTime(18, 0).toInstant(ZoneOffset.UTC));
        }
        assertThat(agenda(TODAY.plusDays(1)).items())
                .extracting(AgendaItem::text)
                .hasSize(4)
                .last()
                .isEqualTo("And 1 more to export, to mend or to check; the board has all");
    }

    @Test
    void theTerminalHasTheSameWordsInEightyColumns() throws ProblemException {
        Agenda agenda = agenda(TODAY);
        List<String> lines = AgendaText.of(agenda);
        assertThat(lines).allMatch(line -> line.length() <= 80);
        String text = String.join(" ", lines).replaceAll(" +", " ");
        assertThat(text).contains(agenda.headline(), agenda.launch()).contains(agenda.why());
        agenda.items().forEach(item -> assertThat(text).contains(item.text()).contains(item.why()));
    }

    private void read(String name, LocalDate day, String outcomes) throws ProblemException {
        Lesson lesson = CourseReader.readable(folder).lesson(name).orElseThrow();
        Instant at = day.atTime(LocalTime.of(10, 0)).toInstant(ZoneOffset.UTC);
        sessions.computeIfAbsent(name, none -> new ArrayList<>()).add(Sessions.of(lesson.script(), at, outcomes));
    }

    private Agenda agenda(LocalDate today) throws ProblemException {
        Course course = CourseReader.readable(folder);
        Map<Lesson, List<RecordedSession>> read = new HashMap<>();
        course.lessons().forEach(lesson -> read.put(lesson, sessions.getOrDefault(lesson.name(), List.of())));
        Board bare = BoardReader.read(course, read, today);
        RecordingBacklog works = RecordingBacklog.of(bare);
        Terms terms = Terms.of(FatigueLimits.defaults(), course.shooting().setUp());
        SessionPlan plan = ChosenDays.plan(works.works(), course.shooting(), terms, today);
        Board board = bare.planned(plan::day);
        CourseList launch = CourseList.of(
                ListKind.LAUNCH, LaunchList.of(board), course.lessons(), ListMarks.read(folder), today, ZoneOffset.UTC);
        List<LessonState> order = plan.sessions().stream()
                .limit(1)
                .map(PlannedSession::works)
                .flatMap(List::stream)
                .map(work -> board.lessons().get(work.lesson() - 1))
                .toList();
        Optional<PlanChange> lost = PlanChange.byLostDays(
                ChosenDays::plan,
                works.works(),
                course.shooting(),
                terms,
                board.lastRecorded(ZoneOffset.UTC),
                today,
                plan);
        return Agenda.of(new AgendaBasis(
                board,
                works,
                plan,
                terms,
                launch,
                lost,
                ZoneOffset.UTC,
                new AgendaBasis.Order(order, List.of(), false)));
    }
}
