package org.bookholder.view.cue;

import java.util.Locale;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionState;
import org.jspecify.annotations.Nullable;

/** What is shown above the first row before a lesson is read from its beginning. Mutable. Confined to one thread. */
public final class Opening {
    private static final double FADE_SECONDS = 0.8;

    /** The lowest level that is shown, in dBFS. */
    private static final double SOFTEST = -60;

    private static final int READ_WORDS = 2;

    private @Nullable Script described;
    private String title = "";
    private String length = "";
    private String sound = "";
    private double level;
    private double light;

    public Opening() {}

    /** The lesson's title. */
    public String title() {
        return title;
    }

    /** Its estimated length, as text. */
    public String length() {
        return length;
    }

    /** The verdict on the sound; empty if no sound is being captured. */
    public String sound() {
        return sound;
    }

    /** The sound's level, 0 to 1. */
    public double level() {
        return level;
    }

    /** Opacity, 0 (invisible) to 1. */
    public double light() {
        return light;
    }

    /** Advances by {@code seconds}. */
    public void advance(SessionState state, SoundCue cue, double seconds) {
        boolean atStart = state.following().position().line() == 1
                && state.following().position().word() <= READ_WORDS;
        light = Math.max(0, Math.min(1, light + (atStart ? seconds : -seconds) / FADE_SECONDS));
        if (light == 0) {
            level = 0;
            return;
        }
        describe(state);
        boolean listens = listens(state);
        double wanted = listens ? Math.max(0, 1 - state.measures().sound().peak() / SOFTEST) : 0;
        level += (wanted - level) * (1 - Math.exp(-seconds / 0.15));
        sound = listens ? cue.verdict().words() : "";
    }

    /** Prepares the texts for title and length, once for each script. */
    @SuppressWarnings("ReferenceEquality")
    private void describe(SessionState state) {
        if (state.script() == described) {
            return;
        }
        described = state.script();
        int target = state.script().settings().targetPace();
        long seconds = Math.round(state.wordsTotal() * 60.0 / target);
        title = state.script().title();
        length = String.format(
                Locale.ROOT,
                "%d %s  ·  %s at %d words a minute",
                state.lines().count(),
                state.lines().count() == 1 ? "line" : "lines",
                Readouts.minutes(seconds),
                target);
    }

    /** Whether a take with sound is rolling. */
    public static boolean listens(SessionState state) {
        return state.takes().rolling()
                && !state.takes().all().isEmpty()
                && !state.takes().last().audio().isEmpty();
    }
}
