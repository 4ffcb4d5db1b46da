package org.bookholder.course;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.bookholder.files.SideBySide;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;

/**
 * The scripts of a course that is looked at again and again: a file is parsed only if its bytes differ from those of the last time.
 * Used by one thread at a time, which may have helpers.
 */
public final class LessonScripts {
    private final SideBySide sideBySide;
    private final Map<Path, Known> known = Collections.synchronizedMap(new HashMap<>());

    private record Known(ByteBuffer bytes, Script script) {}

    /** None yet; they are parsed several at a time by {@code sideBySide}. */
    public LessonScripts(SideBySide sideBySide) {
        this.sideBySide = sideBySide;
    }

    SideBySide sideBySide() {
        return sideBySide;
    }

    /** Reads a script's file. May be asked by several threads. */
    @FunctionalInterface
    interface Source {
        Script read(Path file) throws ProblemException;
    }

    /** A script as {@link ScriptReader#read(Path)} gives it; the same object as long as the file stays as it is. */
    Script read(Path file) throws ProblemException {
        byte[] bytes = ScriptReader.bytes(file);
        ByteBuffer now = ByteBuffer.wrap(bytes);
        Known before = known.get(file);
        if (before != null && before.bytes().equals(now)) {
            return before.script();
        }
        Script script = ScriptReader.parse(bytes, file.toString());
        known.put(file, new Known(now, script));
        return script;
    }

    /** Forgets the scripts of all but these lessons. */
    void keep(List<Lesson> lessons) {
        known.keySet().retainAll(lessons.stream().map(Lesson::file).collect(Collectors.toSet()));
    }
}
