package org.bookholder.view.settings;

import java.util.Locale;

/** Things that can be shown beside the text, each on its own. */
public enum Cue {
    /** The pace, as a leaning blade (the reed) and as a figure. */
    PACE,
    /** The pickups: folded corners, their count, and the lesson's progress line. */
    PICKUPS,
    /** The take's running time and the time left. */
    TIME,
    /** When a break is due. */
    BREAK,
    /** Whether the sound is too low, too loud or missing. */
    SOUND,
    /** The marks at the eye-line (footlights), and a note beside them when the take is held or the place is lost. */
    FOOTLIGHTS;

    /** Its name on the command line. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }
}
