package org.bookholder.timing;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Converts between frame numbers and timecode labels: hours, minutes, seconds, frames.
 *
 * <p>Drop-frame (SMPTE ST 12-1) skips the first labels of every minute except each tenth minute (2 labels at 29.97, 4
 * at 59.94), so that labels stay close to clock time. Only labels are skipped, never frames. Labels start again at zero
 * after 24 hours.
 *
 * @param rate the frame rate
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

    /** The usual timecode for a rate: drop-frame where it exists, so that labels match clock time. */
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

    /** The frame with this label, from 0; empty if the text is not a label, or is a label that drop-frame skips. */
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

    /** Frames in 24 hours of timecode. */
    public long framesPerDay() {
        long all = 24L * 3600 * rate.countedPerSecond();
        return drop ? all - droppedPerMinute() * (24L * 60 - 24L * 6) : all;
    }

    /** Whether a label is written in drop-frame style: with a semicolon or full stop before the frames. */
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
        // The first of ten minutes drops no labels, so it is longer than the others.
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
