package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.course.Editing;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.board.ModuleState;

/**
 * When a module will be recorded and edited, by the plan.
 *
 * @param module the module with its lessons
 * @param unplanned how many of its lessons have neither been recorded nor a day for it
 * @param recorded the day on which its last lesson is to be recorded; empty if all is recorded, or no day is known
 * @param unedited how many of its lessons are still to be edited
 * @param edited the last day of the week in which its last lesson is to be edited; empty if all is edited, or none is known
 */
public record ModuleDates(
        ModuleState module, int unplanned, Optional<LocalDate> recorded, int unedited, Optional<LocalDate> edited) {
    /** Of each module that has lessons, in order. */
    public static List<ModuleDates> of(Board board, List<EditTask> tasks, Editing editing, BurnDown burnDown) {
        Map<String, LocalDate> finished = burnDown.finishes(tasks, editing, board.today());
        List<ModuleDates> dates = new ArrayList<>();
        for (ModuleState module : board.modules()) {
            if (module.module().isPresent() && !module.lessons().isEmpty()) {
                dates.add(of(module, finished));
            }
        }
        return dates;
    }

    private static ModuleDates of(ModuleState module, Map<String, LocalDate> finished) {
        List<LessonState> toRecord = module.lessons().stream()
                .filter(state -> !state.recording().complete())
                .toList();
        List<LessonState> toEdit = module.lessons().stream()
                .filter(state -> state.edited().isEmpty())
                .toList();
        int unplanned = (int)
                toRecord.stream().filter(state -> state.planned().isEmpty()).count();
        boolean allKnown = toEdit.stream()
                .allMatch(state -> finished.containsKey(state.lesson().name()));
        return new ModuleDates(
                module,
                unplanned,
                toRecord.stream().flatMap(state -> state.planned().stream()).max(Comparator.naturalOrder()),
                toEdit.size(),
                allKnown
                        ? toEdit.stream()
                                .map(state -> finished.get(state.lesson().name()))
                                .collect(Collectors.maxBy(Comparator.naturalOrder()))
                        : Optional.empty());
    }

    /** For example "Module 2: Knots: recorded on 2027-03-09 at the latest, edited by 2027-04-11". */
    public String text() {
        String read = unplanned > 0
                ? Text.count(unplanned, "lesson") + " without a recording day"
                : recorded.map(day -> "recorded by " + day).orElse("recorded");
        String cut =
                unedited == 0 ? "edited" : edited.map(day -> "edited by " + day).orElse("");
        return module.heading() + ": " + read + (cut.isEmpty() ? "" : ", " + cut);
    }
}
