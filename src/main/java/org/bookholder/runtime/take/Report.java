package org.bookholder.runtime.take;

/** A message of another stage or a person to the session's owner. */
@FunctionalInterface
public interface Report {
    /** Delivers it. */
    void to(SessionReports session);
}
