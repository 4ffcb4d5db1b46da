package org.bookholder.course;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the lessons of a course were called before their files were renamed or moved: by the files that their sessions were read from. */
public final class FormerNames {
    private final Course course;
    private final Set<String> taken;
    private final Map<String, Lesson> former = new HashMap<>();

    private FormerNames(Course course) {
        this.course = course;
        this.taken = Stream.concat(
                        course.lessons().stream().map(Lesson::name),
                        course.unreadable().stream().map(UnreadableLesson::name))
                .map(FormerNames::key)
                .collect(Collectors.toSet());
    }

    /**
     * Finds them.
     *
     * @param sessions the sessions of each lesson
     */
    public static FormerNames of(Course course, Map<Lesson, List<RecordedSession>> sessions) {
        FormerNames names = new FormerNames(course);
        sessions.forEach((lesson, all) -> all.forEach(session ->
                names.add(lesson, Path.of(session.state().script().source()).toAbsolutePath())));
        return names;
    }

    private void add(Lesson lesson, Path source) {
        Path folder = course.folder().toAbsolutePath().normalize();
        boolean inModule = lesson.module().isPresent();
        if (!inModule || source.normalize().startsWith(folder)) {
            String name = LessonNames.of(folder, source.normalize(), inModule);
            if (isFree(name)) {
                former.putIfAbsent(key(name), lesson);
            }
        }
    }

    /** The lessons as they are now. */
    List<Lesson> lessons() {
        return course.lessons();
    }

    /** Whether no lesson is called so now. */
    boolean isFree(String name) {
        return !taken.contains(key(name));
    }

    /** The lesson that was called so; empty if none was, or if another one is now. */
    Optional<Lesson> now(String name) {
        return Optional.ofNullable(former.get(key(name)));
    }

    /** The lesson that an exported file belongs to: by the names that lessons have, else by those that they had. */
    public Optional<Lesson> lessonOf(Path export) {
        return course.lessonOf(export)
                .or(() -> former.keySet().stream()
                        .filter(name -> LessonNames.begins(export, name))
                        .max(Comparator.comparingInt(String::length))
                        .map(former::get));
    }

    private static String key(String name) {
        return name.toLowerCase(Locale.ROOT);
    }
}
