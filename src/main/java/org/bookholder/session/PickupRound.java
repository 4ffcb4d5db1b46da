package org.bookholder.session;

/**
 * Where the pickup round stands: it brings up each line to pick up, with the line before it as a lead-in, until each has
 * been read clean.
 *
 * @param step what happens with the line
 * @param line the line to pick up, from 1; 0 if there is no round
 * @param tried how many attempts the line had when the round brought it up
 * @param clean how many lines the round has got clean so far
 * @param why what was wrong with the last attempt, for people; empty if nothing was
 */
public record PickupRound(Step step, int line, int tried, int clean, String why) {
    /** No round. */
    public static final PickupRound NONE = new PickupRound(Step.OFF, 0, 0, 0, "");

    /** What happens with the line. */
    public enum Step {
        /** There is no round. */
        OFF,
        /** It is to be read. */
        READING,
        /** It was read, and the ears have not agreed on it yet. */
        LISTENING,
        /** It was read clean; the next one comes. */
        TICKED,
        /** It was not; the same line comes again. */
        AGAIN
    }

    /** Whether there is a round. */
    public boolean isOn() {
        return step != Step.OFF;
    }

    /** The line that leads in to the one to pick up; 0 if there is none. */
    public int leadIn() {
        return Math.max(0, line - 1);
    }

    /** The line that was just read clean; 0 if none was. */
    public int ticked() {
        return step == Step.TICKED ? line : 0;
    }

    /** The same with another line, which had this many attempts before. */
    public PickupRound at(int next, int attempts) {
        return new PickupRound(Step.READING, next, attempts, clean, "");
    }

    /** The same while what was read is heard once more. */
    public PickupRound listening() {
        return new PickupRound(Step.LISTENING, line, tried, clean, "");
    }

    /** The same with the line read clean. */
    public PickupRound ticking() {
        return new PickupRound(Step.TICKED, line, tried, clean + 1, "");
    }

    /** The same with the line to be read once more. */
    public PickupRound again(String reason) {
        return new PickupRound(Step.AGAIN, line, tried, clean, reason);
    }

    /** The same after the text has changed; no round if its line is gone. */
    PickupRound renumbered(Renumbering lines) {
        int now = lines.line(line);
        return now == 0 ? NONE : new PickupRound(step, now, tried, clean, why);
    }
}
