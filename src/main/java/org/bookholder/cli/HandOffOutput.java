package org.bookholder.cli;

import org.bookholder.app.handoff.HandOffService;

/** Prints what a hand-off has written. */
final class HandOffOutput {
    /** Message after an interrupted hand-off. */
    static final String INTERRUPTED = "no file of the hand-off was written or changed";

    private HandOffOutput() {}

    static void print(HandOffService.Written written, Terminal terminal) {
        written.remarks().forEach(terminal::warn);
        terminal.out().println("Cut: " + written.summary());
        written.files().forEach(terminal.out()::println);
        terminal.out().flush();
    }
}
