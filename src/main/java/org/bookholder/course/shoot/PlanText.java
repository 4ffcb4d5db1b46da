package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.course.LessonKind;
import org.bookholder.course.Shooting;
import org.bookholder.course.Text;
import org.bookholder.course.shoot.PlannedSession.Slot;
import org.bookholder.course.shoot.PlannedSession.Use;
import org.bookholder.fatigue.FatigueLimits;

/** Recording sessions as a text for a terminal of 80 columns. */
public final class PlanText {
    private static final int WHAT = 44;
    private static final String BY_KIND =
            "In each session lessons of one kind are read one after another, so that you set up once for"
                    + " them; of these the one with the most hard stretches comes first, while your voice is fresh.";

    private PlanText() {}

    /** The text, line by line. */
    public static List<String> of(RecordingBacklog works, SessionPlan plan, Terms terms) {
        List<String> out = new ArrayList<>();
        out.addAll(Text.wrap(amount(works)));
        if (works.works().isEmpty()) {
            return out;
        }
        if (plan.over() > 0 && !plan.sessions().isEmpty()) {
            out.add(Text.count(plan.over(), "recording day") + " of course.yaml " + (plan.over() == 1 ? "is" : "are")
                    + " over.");
        }
        int number = 0;
        for (PlannedSession session : plan.sessions()) {
            out.add("");
            out.add("Session " + ++number
                    + session.date().map(day -> ", " + day).orElse("") + ": " + Text.hours(session.length())
                    + ", of it " + Text.hours(session.reading()) + " before the camera");
            Optional<LessonKind> kind = Optional.empty();
            for (Slot slot : session.slots()) {
                Optional<LessonKind> next = slot.work().map(RecordingTask::kind);
                if (session.kinds() > 1 && next.isPresent() && !next.equals(kind)) {
                    out.add("         with " + next.get().words() + ":");
                    kind = next;
                }
                out.add(row(session, slot));
            }
        }
        out.add("");
        if (!plan.free().isEmpty()) {
            out.addAll(Text.wrap("Not needed: "
                    + plan.free().stream().map(LocalDate::toString).collect(Collectors.joining(", ")) + "."));
            out.add("");
        }
        if (!plan.left().isEmpty()) {
            out.add("No place was found for:");
            plan.left()
                    .forEach(work ->
                            out.add("  " + work.name() + " (" + work.what() + "), " + Text.hours(work.length())));
            plan.why().forEach(why -> out.addAll(Text.wrap("Why: " + why + ".")));
            out.add("The weeks of editing below leave it out: it can be edited when it is recorded.");
        }
        if (plan.sessions().stream().anyMatch(session -> session.date().isEmpty())) {
            out.addAll(
                    Text.wrap("No recording days are known; write them into course.yaml: recording: days:. The weeks of"
                            + " editing below begin as if all lessons were recorded already."));
        }
        out.addAll(Text.wrap(sources(terms) + " bookholder limits shows how to set your own."));
        return out;
    }

    /** How much is left to record, as one sentence. */
    public static String amount(RecordingBacklog works) {
        return works.works().isEmpty()
                ? "Everything is recorded, and no pickup is open."
                : String.format(
                        Locale.ROOT,
                        "To record: %s before the camera, each lesson rounded up to a minute, at %.2f recorded minutes"
                                + " for each finished one (%s).",
                        Text.hours(SessionPlanner.sum(works.works())),
                        works.ratio(),
                        works.ratioFrom());
    }

    /** The limits that the sessions keep to, with their sources; a limit that the user set is named as the user's. */
    public static String sources(Terms terms) {
        Terms usual = Terms.of(FatigueLimits.defaults(), Shooting.USUAL_SET_UP);
        String yours = "your limits";
        return "A break after " + Text.hours(terms.stretch()) + " of reading ("
                + (terms.stretch().equals(usual.stretch()) ? "voice: Titze, Svec and Popolo 2003" : yours) + ") lasts "
                + Text.hours(terms.pause()) + " (" + (terms.pause().equals(usual.pause()) ? "screen: HSE" : yours)
                + "); at most " + Text.hours(terms.reading()) + " of reading in a session ("
                + (terms.reading().equals(usual.reading()) ? "common practice: 2 to 3 hours" : yours) + "); set-up "
                + Text.hours(terms.setUp()) + " (common practice: " + Text.hours(usual.setUp()) + "). "
                + switch (terms.order()) {
                    case FREE -> BY_KIND;
                    case KEPT -> "The lessons are recorded in the course's order.";
                    case HARD_EARLY -> "The lessons with the most hard stretches come on the first days. " + BY_KIND;
                };
    }

    private static String row(PlannedSession session, Slot slot) {
        String what = slot.use() == Use.SET_UP
                ? "set-up"
                : slot.use() == Use.BREAK
                        ? "break"
                        : slot.work().orElseThrow().name() + " ("
                                + slot.work().orElseThrow().what() + ")";
        return String.format(
                Locale.ROOT, "  %5s  %s %8s", when(session, slot), Text.fit(what, WHAT), Text.hours(slot.length()));
    }

    /** When a part of a session begins: the time of day, or the time since the session began while no day is known. */
    public static String when(PlannedSession session, Slot slot) {
        return session.date().isPresent()
                ? session.from().plus(slot.start()).toString()
                : String.format(
                        Locale.ROOT,
                        "+%d:%02d",
                        slot.start().toHours(),
                        slot.start().toMinutesPart());
    }
}
