package org.bookholder.app.footage;

/**
 * A take that was not found in a file, though the file ran then by the session's clock.
 *
 * @param take take number, from 1
 * @param seconds how long the take is
 * @param about where in the file it should be, in seconds
 */
public record MissedTake(int take, double seconds, double about) {}
