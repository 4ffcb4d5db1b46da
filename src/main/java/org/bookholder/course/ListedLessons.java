package org.bookholder.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.settings.YamlEdit;

/** Where the lessons stand in a course's file: in one list, and in the lists of its modules. */
final class ListedLessons {
    static final List<String> MODULES = List.of("modules");
    private static final String LESSONS = "lessons";

    private ListedLessons() {}

    /**
     * Where a lesson is listed.
     *
     * @param list the path of its list
     * @param index its place there, from 0
     */
    record Place(List<String> list, int index) {}

    /** Whether the file lists the lessons at all; otherwise they are those in the folder. */
    static boolean lists(YamlEdit file) {
        return !file.items(list(0)).isEmpty() || modules(file) > 0;
    }

    /** How many modules the file lists. */
    static int modules(YamlEdit file) {
        return file.items(MODULES).size();
    }

    /** The path of a module's lessons, counted from 1; that of the lessons in no module for 0. */
    static List<String> list(int module) {
        return module == 0 ? List.of(LESSONS) : List.of(MODULES.get(0), String.valueOf(module - 1), LESSONS);
    }

    /** Where a script is listed; empty if it is not. */
    static Optional<Place> place(YamlEdit file, String script) {
        for (int module = 0; module <= modules(file); module++) {
            List<String> list = list(module);
            for (int i = 0; i < file.items(list).size(); i++) {
                Optional<String> inGroup = file.valueOfItem(list, i, "script");
                if (file.item(list, i).equals(script)
                        || inGroup.filter(script::equals).isPresent()) {
                    return Optional.of(new Place(list, i));
                }
            }
        }
        return Optional.empty();
    }

    /** A lesson with what is known of its edit, as an item of a list. */
    static String item(String script, LessonKind kind) {
        return "{script: " + YamlEdit.written(script) + ", kind: " + kind.label() + "}";
    }

    /** The lessons of a course as items of lists; those that are edited as usual by their names alone. */
    static List<String> items(List<Lesson> lessons, Course course) {
        List<String> items = new ArrayList<>();
        for (Lesson lesson : lessons) {
            String script = LessonNames.written(course.folder(), lesson.file());
            items.add(lesson.kind() == LessonKind.PRESENTER ? YamlEdit.written(script) : item(script, lesson.kind()));
        }
        return items;
    }
}
