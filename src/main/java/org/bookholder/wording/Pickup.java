package org.bookholder.wording;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Decision;
import org.bookholder.timing.StreamTime;

/**
 * A line to be recorded again, or to be mended by the editor, as a person wants to read of it.
 *
 * @param line line number, from 1
 * @param firstWords the line's first words, with an ellipsis if there are more
 * @param outcome what became of it
 * @param said what was said instead, one phrase for people; "not read" for a skipped line, empty for a clean one that
 *     was marked by hand
 * @param attempts how often it was tried
 * @param where where to listen; empty if there is no place for it
 * @param marks notes of people who marked it, an empty one where nothing was written
 * @param notes what people noted on it besides, none of them empty
 * @param decision what was decided on it
 */
public record Pickup(
        int line,
        String firstWords,
        Outcome outcome,
        String said,
        int attempts,
        Optional<Place> where,
        List<String> marks,
        List<String> notes,
        Optional<Decision.Choice> decision) {
    /** Copies the lists. */
    public Pickup {
        marks = List.copyOf(marks);
        notes = List.copyOf(notes);
    }

    /** All that people wrote on the line. */
    public List<String> written() {
        return Stream.concat(marks.stream().filter(mark -> !mark.isEmpty()), notes.stream())
                .toList();
    }

    /**
     * A place in the session's takes.
     *
     * @param take take number, from 1
     * @param inTake time from the take's start
     * @param when time of day
     */
    public record Place(int take, StreamTime inTake, Instant when) {}
}
