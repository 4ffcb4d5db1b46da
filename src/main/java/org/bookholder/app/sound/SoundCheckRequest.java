package org.bookholder.app.sound;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What a sound check listens to.
 *
 * @param roomSeconds how long the room is heard
 * @param voiceSeconds how long the voice is heard, at most
 * @param microphone the microphone's name; empty for the default one
 * @param recording a recording (WAV) to hear instead: the room first, then the voice
 */
public record SoundCheckRequest(
        double roomSeconds, double voiceSeconds, Optional<String> microphone, Optional<Path> recording) {}
