package org.bookholder.course;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;

/**
 * The part of a course's progress that only people can tell, kept in {@code progress.json}: which lessons are edited,
 * and in how many hours. Immutable; a later mark overrides an earlier one.
 */
public final class EditingProgress {
    private static final String FILE = "progress.json";
    private static final String LINES = "lines";

    private final List<Mark> marks;

    private EditingProgress(List<Mark> marks) {
        this.marks = List.copyOf(marks);
    }

    /** The kinds of marks. */
    public enum Kind {
        /** The lesson is edited. */
        EDITED,
        /** The lesson is not edited after all. */
        UNEDITED
    }

    /**
     * A mark that a person made.
     *
     * @param when time as text, ISO 8601 in UTC
     * @param lesson the lesson's name
     * @param kind kind of mark
     * @param hours how long the edit took; 0 if not given
     * @param lines what tells the lines of its script at that time from others, so that the lesson is known again when its file
     *     was renamed; empty in marks of earlier versions
     */
    public record Mark(String when, String lesson, Kind kind, double hours, List<String> lines) {
        /** Copies the list. */
        public Mark {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A finished edit.
     *
     * @param when when it was marked as finished
     * @param hours how long it took; 0 if not given
     */
    public record Edited(Instant when, double hours) {}

    /** Nothing marked. */
    public static EditingProgress none() {
        return new EditingProgress(List.of());
    }

    /** Reads the marks kept in a course's folder; throws a problem if they cannot be read. */
    public static EditingProgress read(Path folder) throws ProblemException {
        return new EditingProgress(MarkList.read(
                folder.resolve(FILE), Mark[].class, EditingProgress::older, mark -> Instant.parse(mark.when())));
    }

    private static void older(ObjectNode mark) {
        if (!mark.has(LINES)) {
            mark.putArray(LINES);
        }
    }

    /** Saves the marks in a course's folder; throws a problem if they cannot be written. */
    public void write(Path folder) throws ProblemException {
        MarkList.write(folder.resolve(FILE), marks);
    }

    /** The same with a lesson marked as edited, or as not edited after all. */
    public EditingProgress edited(Instant when, Lesson lesson, boolean done, double hours) {
        return with(new Mark(
                when.toString(), lesson.name(), done ? Kind.EDITED : Kind.UNEDITED, hours, List.copyOf(lines(lesson))));
    }

    /** The same, where marks of lessons whose files were renamed have the names that these have now. */
    public EditingProgress renamed(FormerNames names) {
        return new EditingProgress(marks.stream()
                .map(mark -> names.now(mark.lesson())
                        .or(() -> names.isFree(mark.lesson()) ? alike(names.lessons(), mark) : Optional.empty())
                        .map(lesson -> new Mark(mark.when(), lesson.name(), mark.kind(), mark.hours(), mark.lines()))
                        .orElse(mark))
                .toList());
    }

    private static Optional<Lesson> alike(List<Lesson> lessons, Mark mark) {
        return mark.lines().isEmpty()
                ? Optional.empty()
                : LessonMatcher.mostAlike(lessons, EditingProgress::lines, Set.copyOf(mark.lines()));
    }

    /** Short, because a mark need not hold the script. */
    private static Set<String> lines(Lesson lesson) {
        return lesson.script().lines().stream()
                .map(line -> Integer.toHexString(line.text().hashCode()))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private EditingProgress with(Mark mark) {
        List<Mark> more = new ArrayList<>(marks);
        more.add(mark);
        return new EditingProgress(more);
    }

    /** All marks of a lesson, in the order in which they were made. */
    public List<Mark> marks(Lesson lesson) {
        return marks.stream()
                .filter(mark -> mark.lesson().equals(lesson.name()))
                .toList();
    }

    /** The lesson's edit, if it was marked as done. */
    public Optional<Edited> edited(Lesson lesson) {
        Optional<Edited> found = Optional.empty();
        for (Mark mark : marks) {
            if (mark.lesson().equals(lesson.name())) {
                found = mark.kind() == Kind.EDITED
                        ? Optional.of(new Edited(Instant.parse(mark.when()), mark.hours()))
                        : Optional.empty();
            }
        }
        return found;
    }
}
