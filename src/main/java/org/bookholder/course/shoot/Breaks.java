package org.bookholder.course.shoot;

/**
 * How reading and breaks alternate in a session, in whole minutes.
 *
 * <p>The progress of a session is one number that combines its breaks so far with the minutes read since the last
 * break. Of two sessions with the same amount of reading, the one with the lower number does not last longer than the
 * other, and this stays true whatever both read next. It follows that a session from which something is removed needs
 * no more room than before.
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

    /** The progress of a session that had progress {@code far} and then reads for {@code minutes}. */
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

    /** The duration of a session with this amount of reading and no break more than it must have; breaks included. */
    int shortest(int reading) {
        return reading + pause * ((reading - 1) / stretch);
    }

    /** The duration of a session with this progress and this amount of reading, in minutes, breaks included. */
    int lasting(int far, int reading) {
        return reading + pause * (far / (stretch + 1));
    }
}
