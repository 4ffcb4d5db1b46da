package org.bookholder.runtime;

/** What another stage or a person has to say to the session's only owner. */
@FunctionalInterface
interface Report {
    /** Says it. */
    void to(SessionStage session);
}
