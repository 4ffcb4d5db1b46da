package org.bookholder.runtime.take;

/**
 * How a session's takes are led.
 *
 * @param countIn seconds to count before each take is read, 0 to 10; 0 for no count-in
 * @param pickups whether the session begins with its pickup round
 */
public record Conduct(int countIn, boolean pickups) {
    /** Takes are read at once, from the script's first line on. */
    public static final Conduct PLAIN = new Conduct(0, false);
}
