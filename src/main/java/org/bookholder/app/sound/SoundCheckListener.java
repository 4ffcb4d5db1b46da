package org.bookholder.app.sound;

/** Receives the progress of a sound check. Called on the thread that runs the check. */
public interface SoundCheckListener {
    /** The check begins; {@code source} is the name of the microphone or recording. */
    void begins(String source);

    /** The room is measured for this many seconds: nobody should speak. Not called for a recording. */
    void measuresRoom(double seconds);

    /** The voice is measured for this many seconds: somebody should read aloud. Not called for a recording. */
    void measuresVoice(double seconds);
}
