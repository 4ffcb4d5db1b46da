package org.bookholder.course.shoot;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.ReadingOrder;
import org.bookholder.course.Shooting;
import org.bookholder.course.shoot.PlannedSession.Slot;
import org.bookholder.course.shoot.PlannedSession.Use;

/** Checks a plan against its rules, independently of how it was made. */
public final class PlanRules {
    private final SessionPlan plan;
    private final Terms terms;
    private final List<String> broken = new ArrayList<>();

    private PlanRules(SessionPlan plan, Terms terms) {
        this.plan = plan;
        this.terms = terms;
    }

    /** The rules that {@code plan} breaks, as text; empty if it keeps them all. */
    public static List<String> broken(SessionPlan plan, List<RecordingTask> works, Shooting shooting, Terms terms) {
        PlanRules rules = new PlanRules(plan, terms);
        plan.sessions().forEach(rules::checkSession);
        rules.checkDays(shooting);
        rules.checkOrder();
        rules.checkWorks(works);
        if (plan.left().isEmpty() != plan.why().isEmpty()) {
            rules.broken.add("what is left over has no reason, or the reason nothing left over");
        }
        return rules.broken;
    }

    private void checkSession(PlannedSession session) {
        Duration at = Duration.ZERO;
        Duration stretch = Duration.ZERO;
        Duration reading = Duration.ZERO;
        Optional<RecordingTask> before = Optional.empty();
        for (Slot slot : session.slots()) {
            check(slot.start().equals(at), session, "has a gap");
            at = slot.end();
            if (slot.use() == Use.BREAK) {
                check(slot.length().compareTo(terms.pause()) >= 0, session, "has too short a break");
                stretch = Duration.ZERO;
            } else if (slot.use() == Use.READING) {
                stretch = stretch.plus(slot.length());
                reading = reading.plus(slot.length());
                RecordingTask work = slot.work().orElseThrow();
                check(before.filter(one -> !mayFollow(one, work)).isEmpty(), session, "is read in a wrong order");
                before = Optional.of(work);
            } else {
                check(
                        slot.start().isZero() && slot.length().equals(terms.setUp()),
                        session,
                        "sets up at the wrong time");
            }
            check(stretch.compareTo(terms.stretch()) <= 0, session, "has too long a stretch without a break");
        }
        check(reading.compareTo(terms.reading()) <= 0, session, "has too much reading");
        check(at.compareTo(session.room()) <= 0, session, "is too long");
        check(!reading.isZero(), session, "has nothing to read");
    }

    /** Whether a task may be read after another one: in the course's order, or kind by kind with the hardest of each first. */
    private boolean mayFollow(RecordingTask before, RecordingTask work) {
        if (terms.order() == ReadingOrder.KEPT) {
            return before.lesson() <= work.lesson();
        }
        return before.kind() == work.kind()
                ? work.hardness() <= before.hardness()
                : before.kind().compareTo(work.kind()) < 0;
    }

    /** If the order is not free, what comes first must not be recorded on a later day. */
    private void checkOrder() {
        Optional<RecordingTask> before = Optional.empty();
        for (PlannedSession session : plan.sessions()) {
            for (RecordingTask work : session.works()) {
                if (before.isPresent() && terms.order() == ReadingOrder.KEPT) {
                    check(before.get().lesson() <= work.lesson(), session, "comes out of the course's order");
                }
                before = Optional.of(work);
            }
        }
    }

    private void checkDays(Shooting shooting) {
        Optional<LocalDate> last = Optional.empty();
        for (PlannedSession session : plan.sessions()) {
            check(
                    session.date().isPresent() == !shooting.days().isEmpty(),
                    session,
                    "has a day if none were given, or none");
            if (session.date().isPresent()) {
                LocalDate day = session.date().get();
                check(
                        shooting.days().stream()
                                .anyMatch(d -> d.date().equals(day)
                                        && d.from().equals(session.from())
                                        && d.length().equals(session.room())),
                        session,
                        "is not on a given day");
                check(last.isEmpty() || last.get().isBefore(day), session, "comes out of order");
                last = session.date();
            }
        }
    }

    /** Checks that every task is in the plan exactly once or is left over. */
    private void checkWorks(List<RecordingTask> works) {
        Map<Integer, Duration> planned = new HashMap<>();
        for (PlannedSession session : plan.sessions()) {
            for (Slot slot : session.slots()) {
                slot.work().ifPresent(work -> planned.merge(work.lesson(), slot.length(), Duration::plus));
            }
        }
        plan.left().forEach(work -> planned.merge(work.lesson(), work.length(), Duration::plus));
        Map<Integer, Duration> wanted = new HashMap<>();
        works.forEach(work -> wanted.merge(work.lesson(), work.length(), Duration::plus));
        if (!planned.equals(wanted)) {
            broken.add("what is planned (" + planned + ") is not what is to be recorded (" + wanted + ")");
        }
        for (RecordingTask work : works) {
            long sessions = plan.sessions().stream()
                    .filter(session -> session.works().stream().anyMatch(w -> w.lesson() == work.lesson()))
                    .count();
            boolean fitsWhole = plan.sessions().stream()
                    .anyMatch(session -> work.length().compareTo(terms.stretch()) <= 0
                            && terms.setUp().plus(work.length()).compareTo(session.room()) <= 0
                            && work.length().compareTo(terms.reading()) <= 0);
            if (sessions > 1 && fitsWhole) {
                broken.add(work.name() + " is split, and a session could hold the whole of it");
            }
        }
    }

    private void check(boolean kept, PlannedSession session, String what) {
        if (!kept) {
            broken.add("the session " + session.date().map(LocalDate::toString).orElse("without a day") + " " + what);
        }
    }
}
