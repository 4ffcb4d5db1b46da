package org.bookholder.desk;

/**
 * One session at a desk.
 *
 * @param session the session
 * @param feed tells its pages where it stands
 * @param actions does what its pages ask for
 */
public record ServedSession(DeskSession session, Feed feed, Actions actions) {}
