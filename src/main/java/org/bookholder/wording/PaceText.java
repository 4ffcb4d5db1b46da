package org.bookholder.wording;

import java.util.Optional;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.session.SessionState;

/** Puts the pace of a reading into words: one measure everywhere, words per minute on camera, pauses included. */
public final class PaceText {
    /** How people speak elsewhere: reading aloud (Brysbaert 2019, doi 10.1016/j.jml.2019.104047), news (Rodero 2012). */
    public static final String ORDINARY = "For comparison: people read aloud at about 183 words a minute (Brysbaert"
            + " 2019), and radio news is to be read at 160 to 180 (Rodero 2012). 100 is slow beside that.";

    private PaceText() {}

    /** For example "127 words a minute on camera"; empty while too little was read to tell. */
    public static Optional<String> measured(SessionState state) {
        double pace = state.measures().pace().lesson();
        return Double.isNaN(pace) ? Optional.empty() : Optional.of(Math.round(pace) + " words a minute on camera");
    }

    /** For example "100 (common practice)". */
    public static String target(SessionState state) {
        ScriptSettings settings = state.script().settings();
        return settings.targetPace() + " (" + settings.paceSource().label() + ")";
    }
}
