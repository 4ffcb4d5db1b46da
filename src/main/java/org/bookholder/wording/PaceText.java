package org.bookholder.wording;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.session.SessionState;

/** Puts the pace of a reading into words: one measure everywhere, words per minute on camera, pauses included. */
public final class PaceText {
    /** How people speak elsewhere: reading aloud (Brysbaert 2019, doi 10.1016/j.jml.2019.104047), news (Rodero 2012). */
    public static final String ORDINARY = "For comparison: people read aloud at about 183 words a minute (Brysbaert"
            + " 2019), and radio news is to be read at 160 to 180 (Rodero 2012). 100 is slow beside that.";

    /** Who decides, where several could. */
    public static final String RULE = "The script's own pace comes first, then the course's, then the one you took as"
            + " your own, else 100 (common practice).";

    private PaceText() {}

    /**
     * The target of some lessons, for example "Target: 160 words a minute (the course's)." If they have several, each is told with
     * the number of its lessons.
     *
     * @param targets the target of each lesson as figure and source, such as "160 words a minute (the course's)"
     */
    public static String targets(Collection<String> targets) {
        Map<String, Long> counted = targets.stream()
                .collect(Collectors.groupingBy(Function.identity(), LinkedHashMap::new, Collectors.counting()));
        return counted.entrySet().stream()
                .map(one -> one.getKey() + (counted.size() == 1 ? "" : " for " + lessons(one.getValue())))
                .collect(Collectors.joining(", ", "Target: ", "."));
    }

    private static String lessons(long number) {
        return number + (number == 1 ? " lesson" : " lessons");
    }

    /** For example "160 words a minute (the course's)". */
    public static String target(int pace, PaceSource source) {
        return pace + " words a minute (" + source.label() + ")";
    }

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
