package org.bookholder.course;

import java.time.Instant;
import java.util.List;

/**
 * The result of checking an exported file.
 *
 * @param file the file's name, without its folder
 * @param size its size in bytes when it was checked
 * @param modified when it had last been changed at that time, to the second
 * @param checked when it was checked
 * @param findings why it cannot be delivered yet, one line for each reason; empty if it can
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
