package org.bookholder.runtime.record;

import org.bookholder.script.model.Script;
import org.bookholder.session.Renumbering;

/**
 * A script whose text was changed after a session was left, or that this version of the program divides into other lines.
 *
 * @param sameText whether its text is as it was
 * @param before how many lines it had
 * @param kept how many of them it still has, by their words
 * @param now how many lines it has now
 */
public record MendedScript(boolean sameText, int before, int kept, int now) {
    /** Compares the text that a session had last with another one. */
    public static MendedScript of(Script before, Script now, boolean sameText) {
        Renumbering lines = Renumbering.between(before, now);
        return new MendedScript(
                sameText, before.lines().size(), lines.kept(), now.lines().size());
    }

    /** Whether it is the same lesson for sure, whatever its file is called: at least half of its lines are still there. */
    public boolean alike() {
        return kept > 0 && kept * 2 >= before;
    }

    /** What was changed, one sentence for people. */
    public String sentence() {
        int fresh = now - kept;
        return (sameText ? "this version divides the script into other lines; " : "the script was changed since; ")
                + (kept == before ? "all its lines keep" : kept + " of its " + before + " lines keep")
                + " their notes, and "
                + (fresh == 0 ? "none is new" : fresh == 1 ? "1 line is new" : fresh + " lines are new");
    }
}
