package org.bookholder.course;

import java.time.Instant;
import java.util.List;

/**
 * What the check of an exported file came to.
 *
 * @param file the file's name, without its folder
 * @param size its size in bytes when it was checked
 * @param modified when it had last been changed then, to the second
 * @param checked when it was checked
 * @param findings what stands against delivering it, each one line for people; none if it may go out
 */
public record ExportCheck(String file, long size, Instant modified, Instant checked, List<String> findings) {
    /** Copies the list. */
    public ExportCheck {
        findings = List.copyOf(findings);
    }

    /** Whether the file may go out. */
    public boolean passed() {
        return findings.isEmpty();
    }
}
