package org.bookholder.desk;

/**
 * One session at a desk.
 *
 * @param session the session
 * @param feed sends its state to its pages
 * @param actions carries out what its pages ask for
 */
public record ServedSession(DeskSession session, Feed feed, Actions actions) {}
