package org.bookholder.app.sound;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Input of a sound check.
 *
 * @param roomSeconds how long the room is measured, in seconds
 * @param voiceSeconds how long the voice is measured at most, in seconds
 * @param microphone the microphone's name; empty for the default one
 * @param chosen the name of the microphone that was chosen for this machine; empty if none was
 * @param recording a recording (WAV) to use instead: first the room, then the voice
 */
public record SoundCheckRequest(
        double roomSeconds,
        double voiceSeconds,
        Optional<String> microphone,
        Optional<String> chosen,
        Optional<Path> recording) {}
