package org.bookholder.footage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which channels of a file are heard: all of them mixed, one alone, or two together, of which the second may be inverted.
 *
 * @param first the first of them, from 1; 0 for all
 * @param second the second, from 1; 0 if there is none
 * @param inverted whether the second is inverted, as in a pair that was recorded in opposite phase
 */
public record Channels(int first, int second, boolean inverted) {
    /** All channels, each counting alike. */
    public static final Channels ALL = new Channels(0, 0, false);

    private static final Pattern FORM = Pattern.compile("(\\d{1,3})(?:([+-])(\\d{1,3}))?");
    private static final String EVERY = "all";

    /** Checks the numbers. */
    public Channels {
        boolean pair = second > 0 && first > 0 && second != first;
        if (first < 0 || second < 0 || (!pair && (second > 0 || inverted))) {
            throw new IllegalArgumentException("channels (" + first + ", " + second + ", " + inverted
                    + ") must be none, one, or two different ones from 1");
        }
    }

    /** One channel alone, from 1. */
    public static Channels one(int channel) {
        return new Channels(channel, 0, false);
    }

    /** What {@link #text} wrote; empty if it is nothing of the kind. */
    public static Optional<Channels> named(String text) {
        Matcher form = FORM.matcher(text);
        if (text.equals(EVERY)) {
            return Optional.of(ALL);
        }
        if (!form.matches()) {
            return Optional.empty();
        }
        int first = Integer.parseInt(form.group(1));
        int second = form.group(3) == null ? 0 : Integer.parseInt(form.group(3));
        return first == 0 || (form.group(3) != null && (second == 0 || second == first))
                ? Optional.empty()
                : Optional.of(new Channels(first, second, "-".equals(form.group(2))));
    }

    /** All that can be heard of a file with so many channels: all, each alone, each two together, each two with one inverted. */
    public static List<Channels> of(int count) {
        List<Channels> all = new ArrayList<>(List.of(ALL));
        for (int channel = 1; channel <= count && count > 1; channel++) {
            all.add(one(channel));
        }
        for (boolean inverted : new boolean[] {false, true}) {
            for (int first = 1; first <= count; first++) {
                for (int second = first + 1; second <= count; second++) {
                    all.add(new Channels(first, second, inverted));
                }
            }
        }
        return all;
    }

    /** Whether these are two channels together. */
    public boolean pair() {
        return second > 0;
    }

    /** Whether a file with so many channels has these. */
    public boolean in(int count) {
        return Math.max(first, second) <= count;
    }

    /** How much of each channel of a file with so many is heard; a channel that it lacks is its last one. */
    public double[] weights(int count) {
        double[] weights = new double[count];
        if (first == 0) {
            Arrays.fill(weights, 1.0 / count);
            return weights;
        }
        double share = pair() ? 0.5 : 1;
        weights[Math.min(first, count) - 1] += share;
        if (pair()) {
            weights[Math.min(second, count) - 1] += inverted ? -share : share;
        }
        return weights;
    }

    /** As people write them: {@code all}, {@code 3}, {@code 1+2}, or {@code 1-2} if the second is inverted. */
    public String text() {
        if (first == 0) {
            return EVERY;
        }
        return pair() ? first + (inverted ? "-" : "+") + second : Integer.toString(first);
    }

    /** The same in words, such as "channel 3". */
    public String words() {
        if (first == 0) {
            return "all channels mixed";
        }
        if (!pair()) {
            return "channel " + first;
        }
        return "channels " + first + " and " + second + (inverted ? ", the second inverted" : " together");
    }
}
