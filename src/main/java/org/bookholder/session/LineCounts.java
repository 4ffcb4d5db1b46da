package org.bookholder.session;

import java.util.Collection;
import org.bookholder.follow.model.Outcome;

/**
 * How many lines were read, skipped, and not reached.
 *
 * @param read lines of which there is an attempt, or which the program failed to judge
 * @param skipped lines that the reading passed without an attempt
 * @param notReached lines that the reading did not come to
 */
public record LineCounts(int read, int skipped, int notReached) {
    /** Counts these lines. */
    public static LineCounts of(Collection<LineNotes> lines) {
        int read = 0;
        int skipped = 0;
        for (LineNotes line : lines) {
            if (isRead(line)) {
                read++;
            } else if (line.reached()) {
                skipped++;
            }
        }
        return new LineCounts(read, skipped, lines.size() - read - skipped);
    }

    /** Whether a line counts as read. */
    public static boolean isRead(LineNotes line) {
        return !line.attempts().isEmpty() || line.outcome() == Outcome.NOT_JUDGED;
    }

    /** Number of lines. */
    public int all() {
        return read + skipped + notReached;
    }
}
