package org.bookholder.app.environment;

import java.util.OptionalDouble;

/**
 * How far work has got.
 *
 * @param what what is being worked on, a name to show
 * @param done how much of it is done, from 0 to 1
 * @param secondsLeft about how long the rest will take; empty while that cannot be told
 */
public record Progress(String what, double done, OptionalDouble secondsLeft) {}
