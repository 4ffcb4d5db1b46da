package org.bookholder.session;

/** Who said or did something. */
public enum Person {
    /** Whoever reads, at the reading window. */
    PRESENTER("presenter"),
    /** Whoever watches, at the desk. */
    PRODUCER("producer");

    private final String label;

    Person(String label) {
        this.label = label;
    }

    /** The word for them on screen and in every file. */
    public String label() {
        return label;
    }
}
