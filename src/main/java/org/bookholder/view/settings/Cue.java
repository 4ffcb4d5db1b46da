package org.bookholder.view.settings;

import java.util.Locale;

/** What can be shown beside the text, each for itself. */
public enum Cue {
    /** The reed, and the pace as a figure. */
    PACE,
    /** Folded corners, their count, and the lesson's thread. */
    PICKUPS,
    /** The take's time and the time left. */
    TIME,
    /** When a break is due. */
    BREAK,
    /** When the sound is too low, too loud or gone. */
    SOUND,
    /** The marks at the eye-line, and beside them whether the take is held or the place lost. */
    FOOTLIGHTS;

    /** Its name on the command line. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }
}
