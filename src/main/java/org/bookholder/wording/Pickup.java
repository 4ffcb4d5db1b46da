package org.bookholder.wording;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Decision;
import org.bookholder.timing.StreamTime;

/**
 * A line to record again, or for the editor to fix, described for people.
 *
 * @param line line number, from 1
 * @param firstWords the line's first words, with an ellipsis if there are more
 * @param outcome its outcome
 * @param said what was said instead, one phrase for people; "not read" for a skipped line, empty for a clean one that
 *     was marked by hand
 * @param attempts number of attempts
 * @param where where to listen; empty if there is no such place
 * @param marks notes of people who marked it, as far as no clean attempt settled them; an empty string for a mark without text
 * @param notes further notes on it, none of them empty
 * @param decision the decision about it
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

    /** Everything people wrote about the line. */
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
