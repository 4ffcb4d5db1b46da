package org.bookholder.course;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;

/** Finds the lesson that a session was read from. */
public final class LessonMatcher {
    /** Our choice: a script that kept half its lines is still that script. */
    private static final double HALF = 0.5;

    private LessonMatcher() {}

    /**
     * The lesson of a session: the one from whose file it was read; if that is not there any more, because it was renamed or
     * moved, the one that has the most of its lines, but at least half of them. A lesson that was copied is not recorded by
     * that.
     *
     * @param source the script's file as the session noted it, made absolute
     * @param read the script as it was read
     * @param there whether another file is where a session noted it
     */
    public static Optional<Lesson> lesson(List<Lesson> lessons, Path source, Script read, Predicate<Path> there) {
        for (Lesson lesson : lessons) {
            if (lesson.file().toAbsolutePath().normalize().equals(source.normalize())) {
                return Optional.of(lesson);
            }
        }
        if (there.test(source)) {
            return Optional.empty();
        }
        return mostAlike(lessons, lesson -> texts(lesson.script()), texts(read));
    }

    /** The lesson that has the most of these lines, but at least half of them; a line may be anything by which it is known again. */
    static Optional<Lesson> mostAlike(List<Lesson> lessons, Function<Lesson, Set<String>> known, Set<String> lines) {
        Optional<Lesson> best = Optional.empty();
        double most = HALF;
        for (Lesson lesson : lessons) {
            Set<String> same = new HashSet<>(known.apply(lesson));
            same.retainAll(lines);
            double share = (double) same.size() / lines.size();
            if (share >= most) {
                most = share;
                best = Optional.of(lesson);
            }
        }
        return best;
    }

    private static Set<String> texts(Script script) {
        return script.lines().stream().map(ScriptLine::text).collect(Collectors.toSet());
    }
}
