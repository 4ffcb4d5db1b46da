package org.bookholder.course.board;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.course.Lesson;
import org.bookholder.script.model.AgeingFact;

/**
 * A fact in a script that may be outdated from some day on.
 *
 * @param lesson the lesson whose script contains it
 * @param fact the fact
 * @param lookedAt when somebody looked at it and found it to be right; empty if nobody did
 * @param exports the exported films in which it is said
 * @param captions the captions and transcripts beside them that hold its words
 */
public record DueFact(
        Lesson lesson, AgeingFact fact, Optional<Instant> lookedAt, List<Path> exports, List<Path> captions) {
    /** Copies the lists. */
    public DueFact {
        exports = List.copyOf(exports);
        captions = List.copyOf(captions);
    }

    /** The day on which it was looked at, in UTC; empty text if it was not. */
    public String lookedOn() {
        return lookedAt.map(when -> LocalDate.ofInstant(when, ZoneOffset.UTC).toString())
                .orElse("");
    }

    /** The names of the files that hold it, films first. */
    public List<String> files() {
        return Stream.concat(exports.stream(), captions.stream())
                .map(Path::getFileName)
                .map(String::valueOf)
                .toList();
    }

    /** The line that contains it, as it is read. */
    public String text() {
        return lesson.script().lines().get(fact.line() - 1).text();
    }
}
