package org.bookholder.course.agenda;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.course.CourseModule;
import org.bookholder.course.ReadingOrder;
import org.bookholder.course.Shooting;
import org.bookholder.course.Text;
import org.bookholder.course.agenda.AgendaItem.Kind;
import org.bookholder.course.board.LessonStage;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;

/** What to read to the camera today, and the reasons that hold for it. */
final class RecordingToday {
    private final AgendaBasis basis;
    private final List<LessonState> toRead;
    private final List<RecordingTask> tasks;

    RecordingToday(AgendaBasis basis) {
        this.basis = basis;
        toRead = basis.toRead();
        tasks = toRead.stream().flatMap(state -> basis.tasks(state).stream()).toList();
    }

    List<AgendaItem> items() {
        return toRead.stream()
                .map(state -> new AgendaItem(Kind.READ, state.lesson().name(), text(state), why(state)))
                .toList();
    }

    private String text(LessonState state) {
        List<RecordingTask> own = basis.tasks(state);
        String title = AgendaBasis.quoted(state);
        String what = own.size() == 1 && !own.get(0).inOne() ? own.get(0).what() + " of " : "";
        String length = ", " + Text.hours(basis.camera(List.of(state)));
        return switch (state.stage()) {
            case PICKUPS ->
                "Pick up " + Text.count(state.recording().pickups().size(), "line") + " in " + title + length;
            case BEGUN -> "Record what is missing of " + title + length;
            default -> "Record " + what + title + length;
        };
    }

    private List<String> why(LessonState state) {
        List<String> why = new ArrayList<>();
        if (basis.order().begun().contains(state)) {
            why.add("you began it today, so it comes first");
        }
        if (isChosen(state)) {
            why.add("you put it on this day");
        }
        lost(state, why);
        if (!basis.order().own()) {
            setUp(state, why);
            hardest(state, why);
        }
        frees(state, why);
        if (why.isEmpty()) {
            why.add(
                    isNext(state)
                            ? "next in the course\u2019s order"
                            : "it has a place here so that all is recorded early");
        }
        return why;
    }

    private boolean isChosen(LessonState state) {
        return basis.board().course().shooting().days().stream()
                .filter(day -> day.date().equals(basis.today()))
                .map(Shooting.Day::lessons)
                .anyMatch(lessons -> lessons.contains(state.lesson().name()));
    }

    private void lost(LessonState state, List<String> why) {
        for (PlanChange change : basis.lost().stream().toList()) {
            change.moves().stream()
                    .filter(move -> move.name().equals(state.lesson().name()))
                    .filter(move -> move.to().filter(basis.today()::equals).isPresent())
                    .flatMap(move -> move.from().stream())
                    .findFirst()
                    .ifPresent(from -> why.add(
                            change.lost().contains(from)
                                    ? "it was to be read on " + from + ", when nothing was recorded"
                                    : "it moved here from " + from + " as a recording day was lost"));
        }
    }

    /** Lessons of one kind follow one another; said of the first of them if there are several kinds. */
    private void setUp(LessonState state, List<String> why) {
        RecordingTask first = basis.tasks(state).get(0);
        List<RecordingTask> same = sameKind(first);
        boolean severalKinds = same.size() < tasks.size();
        long lessons = same.stream().map(RecordingTask::lesson).distinct().count();
        if (severalKinds && lessons > 1 && same.get(0).equals(first)) {
            why.add("the first of " + lessons + " lessons with one set-up ("
                    + first.kind().words() + ")");
        } else if (severalKinds && lessons > 1) {
            why.add("the same set-up as the lesson before it");
        }
    }

    private List<RecordingTask> sameKind(RecordingTask task) {
        return tasks.stream().filter(other -> other.kind() == task.kind()).toList();
    }

    /** Whether its hard stretches bring it to the front. */
    private void hardest(LessonState state, List<String> why) {
        RecordingTask first = basis.tasks(state).get(0);
        List<RecordingTask> same = sameKind(first);
        boolean harder = same.stream()
                .filter(other -> other.lesson() != first.lesson())
                .allMatch(other -> other.hardness() < first.hardness());
        boolean alone = same.stream().allMatch(other -> other.lesson() == first.lesson());
        if (basis.terms().order() != ReadingOrder.KEPT
                && !alone
                && harder
                && same.get(0).equals(first)) {
            why.add(String.format(
                    Locale.ROOT,
                    "it has the most hard stretches%s (%.1f in 100 words)%s",
                    same.size() < tasks.size() ? " of these" : " of today\u2019s lessons",
                    first.hardness(),
                    tasks.get(0).equals(first) ? ", so it comes while your voice is fresh" : ""));
        }
    }

    /** What can be done once it is recorded. */
    private void frees(LessonState state, List<String> why) {
        if (state.stage() == LessonStage.BEGUN && !basis.order().begun().contains(state)) {
            int missing = state.recording().unread().size();
            why.add("begun on " + LocalDate.ofInstant(state.recording().last().orElseThrow(), basis.zone()) + "; "
                    + Text.count(missing, "line") + (missing == 1 ? " is" : " are") + " missing");
        }
        if (whole(state) && state.stage() == LessonStage.PICKUPS) {
            why.add("only " + (state.recording().pickups().size() == 1 ? "this pickup keeps" : "these pickups keep")
                    + " it from its edit");
        }
        Optional<CourseModule> module = state.lesson().module();
        boolean lastOfModule = toRead.stream()
                .filter(other -> other.lesson().module().equals(module))
                .reduce((earlier, later) -> later)
                .filter(state::equals)
                .isPresent();
        boolean unreadable = basis.board().course().unreadable().stream()
                .anyMatch(lesson -> lesson.module().equals(module));
        boolean moduleDone = basis.board().lessons().stream()
                .filter(other -> other.lesson().module().equals(module))
                .allMatch(other -> other.recording().complete() || (toRead.contains(other) && whole(other)));
        if (module.isPresent() && lastOfModule && moduleDone && !unreadable) {
            why.add("with it all lessons of " + module.get().heading() + " are recorded");
        }
    }

    /** Whether the plan has all that is left of a lesson for today. */
    private boolean whole(LessonState state) {
        return basis.camera(List.of(state))
                        .compareTo(basis.works().works().stream()
                                .filter(work -> work.lesson() == state.lesson().number())
                                .map(RecordingTask::length)
                                .reduce(Duration.ZERO, Duration::plus))
                >= 0;
    }

    /** Whether no earlier lesson is left to another day. */
    private boolean isNext(LessonState state) {
        return basis.board().lessons().stream()
                .filter(other -> other.lesson().number() < state.lesson().number())
                .allMatch(other -> other.recording().complete() || toRead.contains(other));
    }

    /** Why these lessons, and no others. */
    List<String> why() {
        List<String> why = new ArrayList<>();
        if (toRead.isEmpty()) {
            return why;
        }
        if (basis.order().own()) {
            why.add("You have put together today\u2019s lessons yourself.");
        } else {
            basis.session().filter(session -> session.date().isPresent()).ifPresent(session -> chosen(session, why));
        }
        order(why);
        then(why);
        return why;
    }

    private void chosen(PlannedSession session, List<String> why) {
        why.add("Today is one of your recording days, from " + session.from() + " for " + Text.hours(session.room())
                + ".");
        basis.lost()
                .filter(change -> !change.lost().isEmpty())
                .ifPresent(change -> why.add("Nothing was recorded on "
                        + String.join(
                                ", ",
                                change.lost().stream().map(LocalDate::toString).toList())
                        + ", so the plan goes on from today."));
        List<PlannedSession> later = basis.plan().sessions().stream()
                .filter(other -> !other.equals(session))
                .toList();
        Optional<Duration> shortest = later.stream()
                .flatMap(other -> other.works().stream())
                .map(RecordingTask::length)
                .min(Comparator.naturalOrder());
        if (shortest.isEmpty()) {
            why.add(basis.plan().left().isEmpty() ? "It is all that is left to record." : "No more fits into the day.");
            return;
        }
        Duration room = session.room().minus(session.length());
        Duration reading = basis.terms().reading().minus(session.reading());
        if (room.compareTo(shortest.get()) < 0) {
            why.add("No other lesson fits into the day: " + (room.isZero() ? "no time" : Text.hours(room))
                    + (room.toMinutes() > 1 ? " are" : " is") + " left, and the shortest of the others takes "
                    + Text.hours(shortest.get()) + ".");
        } else if (reading.compareTo(shortest.get()) < 0) {
            why.add("More would be over " + Text.hours(basis.terms().reading())
                    + " of reading in a session, the limit for your voice.");
        } else if (basis.plan().left().isEmpty()) {
            later.stream()
                    .flatMap(other -> other.date().stream())
                    .max(Comparator.naturalOrder())
                    .ifPresent(last -> why.add(Text.hours(room) + (room.toMinutes() == 1 ? " is" : " are")
                            + " left; by the plan another lesson today would" + " not make the last recording day, "
                            + last + ", any earlier."));
        }
    }

    private void order(List<String> why) {
        switch (basis.board().course().shooting().order()) {
            case KEPT -> why.add("The lessons are recorded in the course\u2019s order, as you chose.");
            case HARD_EARLY ->
                why.add("The lessons with the most hard stretches come on the first days, as you chose.");
            case FREE -> {}
        }
    }

    /** How far the course is after today. */
    private void then(List<String> why) {
        long done =
                basis.board().recorded() + toRead.stream().filter(this::whole).count();
        long all = (long) basis.board().lessons().size()
                + basis.board().course().unreadable().size();
        LocalDate tomorrow = basis.today().plusDays(1);
        LocalDate edit = basis.board()
                .course()
                .editing()
                .from()
                .filter(tomorrow::isBefore)
                .orElse(tomorrow);
        if (done > basis.board().recorded()) {
            why.add((done == all
                            ? "Then every lesson is recorded"
                            : "Then " + done + " of " + Text.count(all, "lesson") + (done == 1 ? " is" : " are")
                                    + " recorded")
                    + ", and what you read today can be edited from " + edit + " on.");
        }
    }
}
