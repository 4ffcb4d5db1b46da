package org.bookholder.course.board;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.course.ExportCheck;
import org.bookholder.course.Lesson;
import org.bookholder.course.Text;
import org.bookholder.script.model.ScriptLine;

/**
 * The state of one lesson.
 *
 * @param lesson the lesson
 * @param seconds its likely running time
 * @param recording what was recorded of it
 * @param planned the day planned for recording it, if there is one
 * @param edited when its edit was done, if it was since the last recording
 * @param editHours how many hours the edit took, if given
 * @param drafted whether the program made a draft of its film since the last recording
 * @param exports all its exported files, the newest first
 * @param export the newest export, if it was made since the last recording
 * @param check that export's check, if its present version was checked
 */
public record LessonState(
        Lesson lesson,
        double seconds,
        Recording recording,
        Optional<LocalDate> planned,
        Optional<Instant> edited,
        OptionalDouble editHours,
        boolean drafted,
        List<Path> exports,
        Optional<Path> export,
        Optional<ExportCheck> check) {
    private static final int MOST_LINES = 5;

    /** Copies the list. */
    public LessonState {
        exports = List.copyOf(exports);
    }

    /** The same with the day planned for recording it. */
    LessonState planned(Optional<LocalDate> day) {
        return new LessonState(lesson, seconds, recording, day, edited, editHours, drafted, exports, export, check);
    }

    /** How far it has come. */
    public LessonStage stage() {
        if (!recording.begun()) {
            return planned.isPresent() ? LessonStage.PLANNED : LessonStage.SCRIPT;
        }
        if (!recording.unread().isEmpty()) {
            return LessonStage.BEGUN;
        }
        if (!recording.pickups().isEmpty()) {
            return LessonStage.PICKUPS;
        }
        if (edited.isEmpty()) {
            return LessonStage.RECORDED;
        }
        if (export.isEmpty()) {
            return LessonStage.EDITED;
        }
        return check.filter(ExportCheck::passed).isPresent() ? LessonStage.CHECKED : LessonStage.EXPORTED;
    }

    /** The next step. */
    public String next() {
        return switch (stage()) {
            case SCRIPT -> "plan its recording";
            case PLANNED -> "record it on " + planned.orElseThrow();
            case BEGUN -> "record " + numbers(recording.unread()) + whose(recording.unread()) + on();
            case PICKUPS -> "pick up " + numbers(recording.pickups()) + whose(recording.pickups()) + on();
            case RECORDED ->
                drafted
                        ? "look through its draft and make the film"
                        : exports.isEmpty() ? "edit it" : "edit it again: it was recorded since";
            case EDITED ->
                exports.isEmpty()
                        ? "export it into exports"
                        : "export it again: " + exports.get(0).getFileName() + " is older than the last recording";
            case EXPORTED ->
                check.isEmpty()
                        ? "check " + export.orElseThrow().getFileName()
                        : "mend " + export.orElseThrow().getFileName() + ": "
                                + check.get().findings().get(0);
            case CHECKED -> "nothing: it can go out";
        };
    }

    /** Whose lines these are, if several people speak in the lesson and they are not the lines of all. */
    private String whose(List<Integer> numbers) {
        List<ScriptLine> lines = lesson.script().lines();
        Set<String> all = lines.stream().map(ScriptLine::speaker).collect(Collectors.toSet());
        Set<String> own = new LinkedHashSet<>();
        numbers.forEach(number -> own.add(lines.get(number - 1).speaker()));
        boolean some = own.size() < all.size() && !own.contains("");
        return some ? " (" + String.join(", ", own) + ")" : "";
    }

    private String on() {
        return planned.map(day -> " on " + day).orElse("");
    }

    /** The steps that are missing before the lesson can go out, one phrase for each. */
    public List<String> missing() {
        List<String> missing = new ArrayList<>();
        if (!recording.begun()) {
            missing.add("recording");
        } else if (!recording.unread().isEmpty()) {
            missing.add("recording of " + Text.count(recording.unread().size(), "line"));
        }
        if (!recording.pickups().isEmpty()) {
            missing.add(Text.count(recording.pickups().size(), "pickup"));
        }
        if (edited.isEmpty()) {
            missing.add("edit");
        }
        if (export.isEmpty()) {
            missing.add("export");
        }
        if (check.isEmpty()) {
            missing.add("check");
        } else if (!check.get().passed()) {
            missing.add(Text.count(check.get().findings().size(), "finding") + " of its check");
        }
        return missing;
    }

    private static String numbers(List<Integer> lines) {
        List<String> ranges = Text.ranges(lines);
        String shown = ranges.stream().limit(MOST_LINES).collect(Collectors.joining(", "));
        return (lines.size() == 1 ? "line " : "lines ") + shown + (ranges.size() > MOST_LINES ? ", \u2026" : "");
    }
}
