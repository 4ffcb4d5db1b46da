package org.bookholder.runtime.stage;

/** What the rest of a session does without a stage that has failed. */
public enum Criticality {
    /** A session without it makes no sense: it is ended in order. */
    ESSENTIAL,
    /** It is started again, a few times; if that does not help, the session goes on without it. */
    RESTARTABLE,
    /** The session goes on without it. */
    OPTIONAL
}
