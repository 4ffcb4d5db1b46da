package org.bookholder.session;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;

/**
 * Maps the lines of a script to those of its changed text. A line counts as the same line if its spoken words are the
 * same, whatever its punctuation; a line with changed words is a new line.
 */
public final class Renumbering {
    /** For each old line, from 0, its new number; 0 if it is gone. */
    private final int[] now;

    /** For each old line, from 0, the new line at which a reading that was in it continues. */
    private final int[] goesOn;

    private final int lines;

    private Renumbering(int[] now, int[] goesOn, int lines) {
        this.now = now;
        this.goesOn = goesOn;
        this.lines = lines;
    }

    /** Compares two texts of one script, matching as many lines as possible. */
    public static Renumbering between(Script before, Script after) {
        List<List<Object>> from = words(before);
        List<List<Object>> to = words(after);
        int[] now = new int[from.size()];
        int[] goesOn = new int[from.size()];
        int old = 0;
        int fresh = 0;
        for (AbstractDelta<List<Object>> delta : DiffUtils.diff(from, to).getDeltas()) {
            while (old < delta.getSource().getPosition()) {
                now[old] = ++fresh;
                goesOn[old++] = fresh;
            }
            int changed = delta.getSource().size();
            for (int i = 0; i < changed; i++) {
                goesOn[old++] =
                        fresh + 1 + Math.min(i, Math.max(0, delta.getTarget().size() - 1));
            }
            fresh += delta.getTarget().size();
        }
        while (old < now.length) {
            now[old] = ++fresh;
            goesOn[old++] = fresh;
        }
        return new Renumbering(now, goesOn, to.size());
    }

    /** The new number of old line {@code line}; 0 if it is gone. */
    public int line(int line) {
        return line >= 1 && line <= now.length ? now[line - 1] : 0;
    }

    /** The line now in the place of old line {@code line}: itself, or what replaced it. */
    int place(int line) {
        return Math.max(1, Math.min(position(new ReadingPosition(line, 1)).line(), lines));
    }

    /** How many of the old lines still exist. */
    public int kept() {
        return (int) Arrays.stream(now).filter(line -> line > 0).count();
    }

    /**
     * Where a reading at {@code position} continues: at the same word or, if its line is gone, at the line now in its
     * place.
     */
    public ReadingPosition position(ReadingPosition position) {
        int line = position.line();
        if (line > now.length) {
            return new ReadingPosition(lines + 1, 1);
        }
        return line(line) > 0
                ? new ReadingPosition(line(line), position.word())
                : new ReadingPosition(Math.min(goesOn[line - 1], lines + 1), 1);
    }

    /** The stretch with new line numbers, without lines that are gone. */
    public UnjudgedStretch stretch(UnjudgedStretch old) {
        List<Integer> lines =
                old.lines().stream().map(this::line).filter(line -> line > 0).toList();
        return new UnjudgedStretch(old.take(), old.start(), old.end(), lines);
    }

    /** The attempt with its line's new number; empty if the line is gone. */
    public Optional<Attempt> attempt(Attempt a) {
        int line = line(a.line());
        return line == 0 ? Optional.empty() : Optional.of(a.withLine(line));
    }

    /** The attempts whose lines still exist, with new line numbers. */
    public List<Attempt> attempts(List<Attempt> attempts) {
        List<Attempt> kept = new ArrayList<>();
        attempts.forEach(a -> attempt(a).ifPresent(kept::add));
        return kept;
    }

    /**
     * The asides with new line numbers: each follows the same line as before or, if that is gone, the nearest earlier
     * line that still exists.
     */
    public List<Aside> asides(List<Aside> asides) {
        return asides.stream()
                .map(a -> new Aside(a.take(), a.start(), a.end(), a.said(), lineAtOrBefore(a.line())))
                .toList();
    }

    /** The new number of line {@code line}, or of the nearest earlier line that still exists; 0 if there is none. */
    private int lineAtOrBefore(int line) {
        int old = Math.min(line, now.length);
        while (old > 0 && now[old - 1] == 0) {
            old--;
        }
        return old == 0 ? 0 : now[old - 1];
    }

    private static List<List<Object>> words(Script script) {
        return script.lines().stream().map(Renumbering::words).toList();
    }

    /** What identifies a line: its words as written, without surrounding punctuation, and as spoken. */
    private static List<Object> words(ScriptLine line) {
        List<Object> words = new ArrayList<>();
        line.words().forEach(word -> {
            words.add(word.plain());
            words.add(word.spoken());
        });
        return words;
    }
}
