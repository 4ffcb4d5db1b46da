package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.view.settings.WindowWish;

/**
 * What is to be read, and how.
 *
 * @param script the lesson's file
 * @param session where the session is kept; empty for a new one in the usual place
 * @param anew whether to begin another session even if one of the script was broken off
 * @param from the line to begin at, from 1
 * @param audio a recording to hear instead of a microphone
 * @param microphone the name of the microphone; empty for the default one
 * @param silent whether to do without a microphone from the start
 * @param silentIfNone whether to do without one if there is none, since the voice does not move the text
 * @param unpaced whether the recording is read as fast as it can be
 * @param window how the window is wanted; empty for none
 * @param desk where the desk can be reached; empty for none
 * @param model the recogniser's model
 */
public record ReadingRequest(
        Path script,
        Optional<Path> session,
        boolean anew,
        Optional<Integer> from,
        Optional<Path> audio,
        Optional<String> microphone,
        boolean silent,
        boolean silentIfNone,
        boolean unpaced,
        Optional<WindowWish> window,
        Optional<DeskRequest> desk,
        Path model) {}
