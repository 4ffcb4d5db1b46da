package org.bookholder.runtime.stage;

/** What happens to the session when a stage fails. */
public enum Criticality {
    /** The session makes no sense without the stage: it ends in an orderly way. */
    ESSENTIAL,
    /** The stage is restarted, a few times; if that does not help, the session continues without it. */
    RESTARTABLE,
    /** The session continues without the stage. */
    OPTIONAL
}
