package org.bookholder.app.environment;

import java.util.OptionalDouble;

/**
 * The progress of some work.
 *
 * @param what name of the item being worked on, for display
 * @param done the part that is done, 0 to 1
 * @param secondsLeft estimated time for the rest; empty while unknown
 */
public record Progress(String what, double done, OptionalDouble secondsLeft) {}
