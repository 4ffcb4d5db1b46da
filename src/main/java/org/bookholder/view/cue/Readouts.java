package org.bookholder.view.cue;

import java.util.Locale;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * The figures at the edges. The time left is an estimate and is shown as one: in steps of five seconds, and changed
 * only when the estimate has clearly moved.
 *
 * @param left seconds left as shown, negative if not known
 * @param leftText time left in the lesson, as text
 * @param take number of the running take, 0 if none is running
 * @param second seconds for which it has been running
 * @param takeText the running take and its time as text, empty if none is running
 */
public record Readouts(int left, String leftText, int take, long second, String takeText) {
    public static final Readouts NONE = new Readouts(-1, "", 0, 0, "");

    private static final int STEP = 5;

    /** The figures to show now. */
    public Readouts next(SessionState state) {
        double seconds = state.measures().pace().left().seconds();
        boolean moved = left < 0 || Math.abs(seconds - left) >= STEP * 0.8;
        int nowLeft = moved ? (int) Math.round(seconds / STEP) * STEP : left;
        boolean runs = state.takes().rolling() && !state.takes().all().isEmpty();
        Take running = runs ? state.takes().last() : null;
        int nowTake = running == null ? 0 : running.number();
        long nowSecond =
                running == null ? 0 : (state.now().ticks() - running.start().ticks()) / StreamTime.TICKS_PER_SECOND;
        if (nowLeft == left && nowTake == take && nowSecond == second) {
            return this;
        }
        return new Readouts(
                nowLeft,
                minutes(nowLeft) + " left",
                nowTake,
                nowSecond,
                nowTake == 0 ? "" : "take " + nowTake + "  ·  " + minutes(nowSecond));
    }

    /** Writes a duration in seconds as minutes or hours. */
    static String minutes(long seconds) {
        long hours = seconds / 3600;
        String rest = String.format(Locale.ROOT, hours > 0 ? "%02d:%02d" : "%d:%02d", seconds / 60 % 60, seconds % 60);
        return hours > 0 ? hours + ":" + rest : rest;
    }
}
