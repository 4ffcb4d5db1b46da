package org.bookholder.course.agenda;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.edit.LaunchRoom;

/**
 * What to do in a course today, why that and nothing else, and how much room there is until its launch: in the same words on every page and in
 * the terminal. Lessons stand by their titles, days as yyyy-mm-dd.
 *
 * @param day the day
 * @param headline what the day is for, in a sentence or two
 * @param items what to do, in this order
 * @param why why these lessons are read today, one sentence each; none if none are
 * @param launch how the launch stands, in sentences
 */
public record Agenda(LocalDate day, String headline, List<AgendaItem> items, List<String> why, String launch) {
    /** Copies the lists. */
    public Agenda {
        items = List.copyOf(items);
        why = List.copyOf(why);
    }

    /** The work of the day that follows from these. */
    public static Agenda of(AgendaBasis basis) {
        RecordingToday recording = new RecordingToday(basis);
        RestOfToday rest = new RestOfToday(basis);
        List<AgendaItem> items = new ArrayList<>(rest.factsToRead());
        items.addAll(recording.items());
        items.addAll(rest.items());
        return new Agenda(
                basis.today(),
                AgendaHeadline.of(basis, !items.isEmpty()),
                items,
                recording.why(),
                LaunchRoom.of(basis.board(), basis.zone()).sentences());
    }

    /** Why a lesson has its place today, as one text; empty if there is nothing to do for it today. */
    public Optional<String> why(String lesson) {
        List<String> reasons = items.stream()
                .filter(item -> item.lesson().equals(lesson) && item.kind() != AgendaItem.Kind.FACT)
                .flatMap(item -> item.why().stream())
                .distinct()
                .toList();
        return reasons.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", reasons));
    }
}
