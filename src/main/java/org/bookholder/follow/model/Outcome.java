package org.bookholder.follow.model;

/** The result of reading a line. */
public enum Outcome {
    /** Read as written. */
    CLEAN,
    /** Read to the end, with words swapped, dropped or added. */
    MISREAD,
    /** Broken off and never finished. */
    INCOMPLETE,
    /** Not read. */
    SKIPPED,
    /** Perhaps read, but the program failed to judge it. */
    NOT_JUDGED
}
