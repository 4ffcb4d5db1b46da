package org.bookholder.view;

import java.util.Locale;
import org.bookholder.session.SessionState;

/**
 * What is said before a lesson is read from its beginning, in the empty room above its first row.
 *
 * @param title the lesson's title
 * @param length how long it will run, in words
 * @param sound a verdict on the sound, empty if nothing listens
 * @param level how loud it is, 0 to 1
 * @param light 0 to 1
 */
public record Opening(String title, String length, String sound, double level, double light) {
    /** Nothing to say. */
    static final Opening NONE = new Opening("", "", "", 0, 0);

    private static final double FADE_SECONDS = 0.8;

    /** The softest level that is shown, in dBFS. */
    private static final double SOFTEST = -60;

    private static final int READ_WORDS = 2;

    /** What is to be seen {@code seconds} later. */
    Opening after(SessionState state, SoundCue cue, double seconds) {
        boolean atStart = state.position().line() == 1 && state.position().word() <= READ_WORDS;
        double faded = light + (atStart ? seconds : -seconds) / FADE_SECONDS;
        double now = Math.max(0, Math.min(1, faded));
        if (now == 0) {
            return NONE;
        }
        boolean listens = listens(state);
        double wanted = listens ? Math.max(0, 1 - state.sound().peak() / SOFTEST) : 0;
        double share = 1 - Math.exp(-seconds / 0.15);
        return new Opening(
                state.script().title(),
                lengthOf(state),
                listens ? cue.verdict().words() : "",
                level + (wanted - level) * share,
                now);
    }

    /** Whether a take is rolling that has sound. */
    static boolean listens(SessionState state) {
        return state.rolling()
                && !state.takes().isEmpty()
                && !state.takes().get(state.takes().size() - 1).audio().isEmpty();
    }

    private static String lengthOf(SessionState state) {
        int target = state.script().settings().targetPace();
        long seconds = Math.round(state.wordsTotal() * 60.0 / target);
        return String.format(
                Locale.ROOT,
                "%d lines  ·  %s at %d words a minute",
                state.lines().size(),
                Readouts.minutes(seconds),
                target);
    }
}
