package org.bookholder.testing;

import org.bookholder.app.sound.SoundCheckListener;

/** Listens to a sound check and tells nobody. */
public final class UntoldSoundCheck implements SoundCheckListener {
    @Override
    public void begins(String source) {}

    @Override
    public void measuresRoom(double seconds) {}

    @Override
    public void measuresVoice(double seconds) {}
}
