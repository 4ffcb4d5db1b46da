package org.bookholder.app.sound;

/** Follows a sound check. Called on the thread that runs the check. */
public interface SoundCheckListener {
    /** The check begins; {@code source} names the microphone or the recording. */
    void begins(String source);

    /** The room is measured for so many seconds: nobody should speak. Not called for a recording. */
    void measuresRoom(double seconds);

    /** The voice is measured for so many seconds: somebody should read aloud. Not called for a recording. */
    void measuresVoice(double seconds);
}
