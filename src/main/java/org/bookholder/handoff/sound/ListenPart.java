package org.bookholder.handoff.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.ListeningCut;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;

/** The chosen attempts joined in one WAV file, so that the lesson can be heard before anything is edited. */
public final class ListenPart implements HandOffPart {
    @Override
    public String name() {
        return "listen";
    }

    @Override
    public String description() {
        return "the cut lesson as one WAV file, to listen to";
    }

    @Override
    public boolean needsSound() {
        return true;
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return handOff.cut().clips().isEmpty()
                ? List.of()
                : List.of(new HandOffFile(handOff.name() + "-listen.wav", out -> write(handOff, out)));
    }

    private static void write(HandOff handOff, OutputStream out) throws IOException, ProblemException {
        Optional<ListeningCut> cut = ListeningCut.of(handOff.cut(), handOff.sound());
        if (cut.isEmpty()) {
            throw new ProblemException(
                    "none of the takes was recorded",
                    handOff.name() + "-listen.wav",
                    "leave the listening cut (listen) out of the hand-off");
        }
        ListeningCut heard = cut.get();
        WavChunks.begin(out, heard.rate(), heard.samples(), List.of());
        for (int piece = 0; piece < heard.pieces(); piece++) {
            WavChunks.samples(out, heard.piece(piece));
        }
    }
}
