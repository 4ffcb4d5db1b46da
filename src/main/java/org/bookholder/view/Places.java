package org.bookholder.view;

import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;

/** The places in a script that keys lead to. */
public final class Places {
    /** Stepping back at most this many words into a line means the line before. */
    private static final int JUST_BEGUN = 2;

    private Places() {}

    /** The start of the line; the first line when the script has been read to the end. */
    static ReadingPosition lineStart(Script script, ReadingPosition from) {
        boolean over = from.line() > script.lines().size();
        return new ReadingPosition(over ? 1 : from.line(), 1);
    }

    /** The start of the line, or of the line before if this one has only just begun. */
    static ReadingPosition lineBack(Script script, ReadingPosition from) {
        int line = Math.min(from.line(), script.lines().size() + 1);
        boolean begun = from.word() <= JUST_BEGUN;
        return new ReadingPosition(Math.max(1, begun ? line - 1 : line), 1);
    }

    /** The start of the next line; of the last line if there is none. */
    public static ReadingPosition lineForward(Script script, ReadingPosition from) {
        return new ReadingPosition(
                Math.max(1, Math.min(from.line() + 1, script.lines().size())), 1);
    }

    /** The start of the paragraph, or of the paragraph before if this one has only just begun. */
    static ReadingPosition paragraphBack(Script script, ReadingPosition from) {
        List<ScriptLine> lines = script.lines();
        if (lines.isEmpty()) {
            return ReadingPosition.START;
        }
        int line = Math.min(from.line(), lines.size());
        int start = paragraphStart(lines, line);
        boolean begun = from.line() == start && from.word() <= JUST_BEGUN;
        return new ReadingPosition(begun && start > 1 ? paragraphStart(lines, start - 1) : start, 1);
    }

    /** The line that the presenter means when marking one: the line being read, or the one just finished. */
    static int lineJustRead(Script script, ReadingPosition from) {
        int line = from.word() <= JUST_BEGUN ? from.line() - 1 : from.line();
        return Math.max(1, Math.min(line, script.lines().size()));
    }

    private static int paragraphStart(List<ScriptLine> lines, int line) {
        int start = line;
        while (start > 1
                && lines.get(start - 2).paragraph() == lines.get(line - 1).paragraph()) {
            start--;
        }
        return start;
    }
}
