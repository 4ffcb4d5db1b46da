package org.bookholder.runtime.take;

/** What another stage or a person has to say to the session's only owner. */
@FunctionalInterface
public interface Report {
    /** Says it. */
    void to(SessionReports session);
}
