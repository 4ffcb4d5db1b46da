package org.bookholder.course.shoot;

/**
 * How reading and breaks follow each other in a session, in whole minutes.
 *
 * <p>How far a session has come is one number: its breaks so far, then the minutes read since the last. Of two sessions with
 * as much reading the one with the lower number lasts no longer, and whatever both read next, that stays so. Hence a session
 * from which something is left out needs no more room than before.
 *
 * @param stretch the most reading without a break, above 0
 * @param pause length of a break
 */
record Breaks(int stretch, int pause) {
    static final int NOTHING_READ = 0;

    static Breaks of(Terms terms) {
        return new Breaks(
                Math.toIntExact(terms.stretch().toMinutes()),
                Math.toIntExact(terms.pause().toMinutes()));
    }

    /** How far a session has come that had come so far and then reads for {@code minutes}. */
    int read(int far, int minutes) {
        int breaks = far / (stretch + 1);
        int since = far % (stretch + 1);
        for (int left = minutes; left > 0; ) {
            int next = Math.min(left, stretch);
            if (since + next > stretch) {
                breaks++;
                since = 0;
            }
            since += next;
            left -= next;
        }
        return breaks * (stretch + 1) + since;
    }

    /** How long it took to come so far with so much reading, in minutes, breaks included. */
    int lasting(int far, int reading) {
        return reading + pause * (far / (stretch + 1));
    }
}
