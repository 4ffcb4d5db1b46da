package org.bookholder.session;

/** Who said or did something. */
public enum Person {
    /** The person who reads, at the reading window. */
    PRESENTER,
    /** The person who watches, at the desk. */
    PRODUCER
}
