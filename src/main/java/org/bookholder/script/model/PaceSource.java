package org.bookholder.script.model;

/** Who says at which pace a script is to be read. The first that says something is followed. */
public enum PaceSource {
    /** The script itself. */
    SCRIPT("the script's"),
    /** The course that it belongs to. */
    COURSE("the course's"),
    /** The presenter, who took the pace that was measured. */
    OWN("your own"),
    /** Nobody; common practice. */
    USUAL("common practice");

    private final String label;

    PaceSource(String label) {
        this.label = label;
    }

    /** How it is called beside a figure. */
    public String label() {
        return label;
    }
}
