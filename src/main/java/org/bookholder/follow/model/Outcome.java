package org.bookholder.follow.model;

/** The result of reading a line. */
public enum Outcome {
    /** Read as written. */
    CLEAN("clean"),
    /** Read to the end, with words swapped, dropped or added. */
    MISREAD("misread"),
    /** Broken off and never finished. */
    INCOMPLETE("incomplete"),
    /** Not read. */
    SKIPPED("skipped"),
    /** Perhaps read, but the program failed to judge it. */
    NOT_JUDGED("not judged");

    private final String label;

    Outcome(String label) {
        this.label = label;
    }

    /** The word used on screen and in every file. */
    public String label() {
        return label;
    }
}
