package org.bookholder.bench;

/** What can happen to a line in a composed reading. */
enum Happening {
    /** It is read as it is written. */
    NOTHING,
    /** It is left out. */
    SKIP,
    /** It is broken off, and the reader goes on with the next. */
    PARTIAL,
    /** The script has a different word from the one that is read. */
    SWAP,
    /** The script has a word that is not read. */
    DROP,
    /** The script lacks a word that is read. */
    EXTRA,
    /** It is broken off, and then read from its start. */
    RESTART,
    /** It is read twice. */
    AGAIN,
    /** When it has been read, the reader goes back two lines and reads on from there. */
    BACK;

    /** Whether what was written had to be changed. */
    boolean altersScript() {
        return this == SWAP || this == DROP || this == EXTRA;
    }

    /** Whether the line must be long enough to be broken off or changed. */
    boolean needsLength() {
        return altersScript() || this == PARTIAL || this == RESTART;
    }
}
