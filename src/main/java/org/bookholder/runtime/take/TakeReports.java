package org.bookholder.runtime.take;

import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.sound.Spoil;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/** Receives the reports of a take's stages. All methods are called on the session's thread. */
public interface TakeReports {
    /** An ear reports a hypothesis about a take. */
    void heard(int take, Hypothesis hypothesis);

    /** The levels of a take's frames. */
    void heard(int take, FrameLevels levels);

    /** An ear has processed a take up to {@code to}. */
    void heardTo(int take, EarKind ear, StreamTime to);

    /** The script ear failed and did not process a stretch of a take. */
    void notHeard(int take, StreamTime from, StreamTime to);

    /** The script ear fell behind and skipped this much. */
    void unheard(StreamTime length);

    /** The position has fallen behind a take's sound, or keeps up with it again. */
    void late(int take, boolean late);

    /** An event to record in the session unchanged. */
    void happened(SessionEvent event);

    /** A stretch of a take's sound is spoiled. */
    void spoiled(int take, Spoil spoil);

    /** A take's sound has ended. */
    void captureEnded(int take, StreamTime at, TakeEnd reason);

    /** An ear has finished with a take. */
    void earDone(int take, EarKind ear);

    /** The open ear may skip everything it has not processed yet. */
    void hurry();
}
