package org.bookholder.timing;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Names frames as editors do: hours, minutes, seconds, frames.
 *
 * <p>Drop-frame (SMPTE ST 12-1) leaves out the first numbers of every minute but each tenth, 2 of them at 29.97 and 4 at
 * 59.94, so that the count stays near the clock. No frame is left out. Counts past 24 hours begin again at zero.
 *
 * @param rate pictures a second
 * @param drop whether numbers are dropped; only where the rate {@link FrameRate#canDrop() can}
 */
public record Timecode(FrameRate rate, boolean drop) {
    private static final Pattern LABEL = Pattern.compile("(\\d{2}):([0-5]\\d):([0-5]\\d)([:;.])(\\d{2})");
    private static final int HOURS = 24;

    /** Checks that the rate can drop. */
    public Timecode {
        if (drop && !rate.canDrop()) {
            throw new IllegalArgumentException("drop-frame (" + rate.label() + ") must be at 29.97 or 59.94");
        }
    }

    /** The usual way to count at a rate: drop-frame where there is such a thing, so that labels tell the time of day. */
    public static Timecode usual(FrameRate rate) {
        return new Timecode(rate, rate.canDrop());
    }

    /** The label of a frame, from 0: {@code 01:00:00:00}, with a semicolon before the frames if numbers are dropped. */
    public String label(long frame) {
        if (frame < 0) {
            throw new IllegalArgumentException("frame (" + frame + ") must not be negative");
        }
        int counted = rate.countedPerSecond();
        long number = numberOf(frame % framesPerDay());
        long seconds = number / counted;
        return pair(seconds / 3600)
                + ':'
                + pair(seconds / 60 % 60)
                + ':'
                + pair(seconds % 60)
                + (drop ? ';' : ':')
                + pair(number % counted);
    }

    /** The frame that has that label, from 0; empty if it is no label, or one that this count leaves out. */
    public Optional<Long> frame(String label) {
        Matcher parts = LABEL.matcher(label.strip());
        if (!parts.matches()) {
            return Optional.empty();
        }
        long hours = Long.parseLong(parts.group(1));
        long minutes = 60 * hours + Long.parseLong(parts.group(2));
        long seconds = 60 * minutes + Long.parseLong(parts.group(3));
        long frames = Long.parseLong(parts.group(5));
        int counted = rate.countedPerSecond();
        if (hours >= HOURS || frames >= counted) {
            return Optional.empty();
        }
        boolean left = drop && seconds % 60 == 0 && minutes % 10 != 0 && frames < droppedPerMinute();
        long dropped = drop ? droppedPerMinute() * (minutes - minutes / 10) : 0;
        return left ? Optional.empty() : Optional.of(seconds * counted + frames - dropped);
    }

    /** Frames in a day of this count. */
    public long framesPerDay() {
        long all = 24L * 3600 * rate.countedPerSecond();
        return drop ? all - droppedPerMinute() * (24L * 60 - 24L * 6) : all;
    }

    /** Whether a label is written as drop-frame is: with a semicolon or full stop before the frames. */
    public static boolean looksDropped(String label) {
        Matcher parts = LABEL.matcher(label.strip());
        return parts.matches() && !parts.group(4).equals(":");
    }

    private long numberOf(long frame) {
        if (!drop) {
            return frame;
        }
        long dropped = droppedPerMinute();
        long minute = 60L * rate.countedPerSecond() - dropped;
        long tenMinutes = 10 * minute + dropped;
        long tens = frame / tenMinutes;
        long rest = frame % tenMinutes;
        // The first of ten minutes drops none, so it is longer than the others.
        long dropsInRest = rest < dropped ? 0 : dropped * ((rest - dropped) / minute);
        return frame + 9 * dropped * tens + dropsInRest;
    }

    private long droppedPerMinute() {
        return rate.countedPerSecond() / 15;
    }

    private static String pair(long number) {
        return (number < 10 ? "0" : "") + number;
    }
}
