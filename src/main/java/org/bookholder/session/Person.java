package org.bookholder.session;

/** Who said or did something. */
public enum Person {
    /** The person who reads, at the reading window. */
    PRESENTER("presenter"),
    /** The person who watches, at the desk. */
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
