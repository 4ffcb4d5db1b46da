package org.bookholder.script.source;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.Speaker;
import org.jspecify.annotations.Nullable;

/**
 * Whose part of a script is being read in: a name before a line begins a part, the next name or a heading ends it. So the
 * paragraphs of a long answer need no name each; that they are taken as the other speaker's is noted.
 */
final class SpeakerParts {
    private final Speakers speakers;
    private final Set<String> heard = new LinkedHashSet<>();
    private Speakers.@Nullable Label now;
    private boolean paragraphBegins;
    private boolean noted;

    SpeakerParts(Speakers speakers) {
        this.speakers = speakers;
    }

    /** Begins a part; returns what is shown for it: nothing but the cue if the same speaker goes on. */
    String begin(Speakers.Label label) {
        boolean goesOn = now != null && Speakers.same(now.text(), label.text());
        now = label;
        noted = false;
        paragraphBegins = false;
        heard.addAll(label.names());
        String cue = label.cue().isEmpty() ? "" : "(" + label.cue() + ")";
        return goesOn ? cue : (label.text() + " " + cue).strip();
    }

    /** Ends the part: what follows is for the one who reads, until the next name. */
    void end() {
        now = null;
    }

    /** Whose part it is, as the name was written; empty if it is nobody's. */
    String speaker() {
        return now == null ? "" : now.text();
    }

    /** Says that a paragraph begins. */
    void paragraph() {
        paragraphBegins = true;
    }

    /** Whether somebody else speaks than those whose lines are read. */
    boolean othersSpeak() {
        return now != null && !now.names().isEmpty() && now.names().stream().noneMatch(speakers::isWanted);
    }

    /** Takes one line of the file; the note on it if it begins the first paragraph that only seems to be another speaker's. */
    Optional<LeftOut> take(String text, int sourceLine) {
        boolean first = paragraphBegins && !noted && now != null && othersSpeak() && !text.isEmpty();
        paragraphBegins = false;
        if (!first || now == null) {
            return Optional.empty();
        }
        noted = true;
        return Optional.of(new LeftOut(
                sourceLine,
                ScriptBuilder.brief(text),
                "taken as " + now.text()
                        + "'s, like all up to the next name or heading; to have it read, put the reader's"
                        + " name and a colon before it"));
    }

    /** The names before the lines, each as first written. */
    Set<String> heard() {
        return heard;
    }

    /** Those who speak, in the order in which they first do. */
    List<Speaker> speakers() {
        return speakers.among(heard);
    }
}
