package org.bookholder.view.cue;

/** Shows the presenter one short message at a time, which fades by itself. Confined to one thread. */
public final class Messages {
    private static final double FADE_SECONDS = 0.5;

    private String text = "";
    private double left;

    /** Shows a message for this many seconds; it replaces the one before. */
    public void say(String message, double seconds) {
        text = message;
        left = seconds;
    }

    public void advance(double seconds) {
        left = Math.max(0, left - seconds);
    }

    public String text() {
        return left > 0 ? text : "";
    }

    public double light() {
        return Math.min(1, left / FADE_SECONDS);
    }
}
