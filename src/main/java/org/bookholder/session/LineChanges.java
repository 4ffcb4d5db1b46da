package org.bookholder.session;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;

/** What changed in the lines of a script from one text to another. Directions and settings are not compared. */
public final class LineChanges {
    private LineChanges() {}

    /** The kinds of changes. */
    public enum Kind {
        /** The line is new. */
        ADDED,
        /** The line is gone. */
        REMOVED,
        /** Another line stands in its place. */
        CHANGED
    }

    /**
     * A change of one line.
     *
     * @param kind what became of it
     * @param line its number in the new text; of a line that is gone, in the old one
     * @param was what it said; empty if it is new
     * @param is what it says; empty if it is gone
     */
    public record Change(Kind kind, int line, String was, String is) {}

    /** The changes from one text to another, in the order of the lines; as few as possible. */
    public static List<Change> between(Script before, Script after) {
        List<Change> changes = new ArrayList<>();
        for (AbstractDelta<String> delta :
                DiffUtils.diff(texts(before), texts(after)).getDeltas()) {
            List<String> was = delta.getSource().getLines();
            List<String> is = delta.getTarget().getLines();
            int old = delta.getSource().getPosition() + 1;
            int fresh = delta.getTarget().getPosition() + 1;
            for (int i = 0; i < Math.max(was.size(), is.size()); i++) {
                if (i >= is.size()) {
                    changes.add(new Change(Kind.REMOVED, old + i, was.get(i), ""));
                } else if (i >= was.size()) {
                    changes.add(new Change(Kind.ADDED, fresh + i, "", is.get(i)));
                } else {
                    changes.add(new Change(Kind.CHANGED, fresh + i, was.get(i), is.get(i)));
                }
            }
        }
        return changes;
    }

    private static List<String> texts(Script script) {
        return script.lines().stream().map(ScriptLine::text).toList();
    }
}
