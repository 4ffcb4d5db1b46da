package org.bookholder.handoff.captions;

import java.util.List;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;

/**
 * Captions of the cut lesson as WebVTT (W3C) and SubRip, its transcript and its chapters: what is said in it, in the script's
 * spelling, with the times at which the words were said.
 */
public final class CaptionsPart implements HandOffPart {
    @Override
    public String name() {
        return "captions";
    }

    @Override
    public String description() {
        return "captions of the cut lesson as WebVTT and SubRip, its transcript and chapters";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return new FilmTexts(
                        handOff.state().script(),
                        CutTranscript.of(handOff),
                        handOff.timeline().rate().length(handOff.timeline().frames()))
                .files(handOff.name());
    }
}
