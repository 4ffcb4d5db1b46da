package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.Mover;
import org.bookholder.view.settings.WindowWish;

/**
 * What to read, and how.
 *
 * @param script the lesson's file
 * @param speakers those of the script whose lines are read; empty if the script's own setting counts
 * @param presenter who reads, if breaks are to be counted apart from those of others at this machine
 * @param session folder of the session; empty for a new one in the default place
 * @param anew whether to begin a new session even if one of this script was interrupted
 * @param from the line to begin at, from 1
 * @param conduct how takes are led
 * @param audio a recording to use instead of a microphone
 * @param microphone the name of the microphone; empty for the default one
 * @param silent whether to use no microphone at all
 * @param silentIfNone whether to continue without a microphone if there is none, because the voice does not move the
 *     text
 * @param unpaced whether to read the recording as fast as possible
 * @param window settings of the window; empty for none
 * @param desk how the desk should be reachable; empty for none
 * @param model the recogniser's model
 */
public record ReadingRequest(
        Path script,
        List<String> speakers,
        Optional<String> presenter,
        Optional<Path> session,
        boolean anew,
        Optional<Integer> from,
        Conduct conduct,
        Optional<Path> audio,
        Optional<String> microphone,
        boolean silent,
        boolean silentIfNone,
        boolean unpaced,
        Optional<WindowWish> window,
        Optional<DeskRequest> desk,
        Path model) {
    /** Copies the list. */
    public ReadingRequest {
        speakers = List.copyOf(speakers);
    }

    /** The same with text that moves by itself, if the voice was to move it. */
    ReadingRequest steadily() {
        return new ReadingRequest(
                script,
                speakers,
                presenter,
                session,
                anew,
                from,
                conduct,
                audio,
                microphone,
                silent,
                true,
                unpaced,
                window.map(wish -> wish.settings().way() == Mover.VOICE
                        ? new WindowWish(wish.settings().withWay(Mover.STEADY), wish.place())
                        : wish),
                desk,
                model);
    }
}
