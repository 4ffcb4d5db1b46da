package org.bookholder.view;

/** One short message at a time for the presenter, which fades away by itself. Confined to one thread. */
final class Messages {
    private static final double FADE_SECONDS = 0.5;

    private String text = "";
    private double left;

    /** Shows a message for some seconds in place of the one before. */
    void say(String message, double seconds) {
        text = message;
        left = seconds;
    }

    void advance(double seconds) {
        left = Math.max(0, left - seconds);
    }

    String text() {
        return left > 0 ? text : "";
    }

    double light() {
        return Math.min(1, left / FADE_SECONDS);
    }
}
