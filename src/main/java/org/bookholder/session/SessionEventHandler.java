package org.bookholder.session;

/** Receives events by kind. */
public interface SessionEventHandler {
    /** Told of {@link SessionEvent.Opened}. */
    void opened(SessionEvent.Opened event);

    /** Told of {@link SessionEvent.DayCarried}. */
    void dayCarried(SessionEvent.DayCarried event);

    /** Told of {@link SessionEvent.PaceAimed}. */
    void paceAimed(SessionEvent.PaceAimed event);

    /** Told of {@link SessionEvent.TextChanged}. */
    void textChanged(SessionEvent.TextChanged event);

    /** Told of {@link SessionEvent.TakeStarted}. */
    void takeStarted(SessionEvent.TakeStarted event);

    /** Told of {@link SessionEvent.TakeEnded}. */
    void takeEnded(SessionEvent.TakeEnded event);

    /** Told of {@link SessionEvent.PositionMoved}. */
    void positionMoved(SessionEvent.PositionMoved event);

    /** Told of {@link SessionEvent.FollowChanged}. */
    void followChanged(SessionEvent.FollowChanged event);

    /** Told of {@link SessionEvent.AttemptSettled}. */
    void attemptSettled(SessionEvent.AttemptSettled event);

    /** Told of {@link SessionEvent.TakeSettled}. */
    void takeSettled(SessionEvent.TakeSettled event);

    /** Told of {@link SessionEvent.AsidesHeard}. */
    void asidesHeard(SessionEvent.AsidesHeard event);

    /** Told of {@link SessionEvent.NotJudged}. */
    void notJudged(SessionEvent.NotJudged event);

    /** Told of {@link SessionEvent.Understood}. */
    void understood(SessionEvent.Understood event);

    /** Told of {@link SessionEvent.PickupMarked}. */
    void pickupMarked(SessionEvent.PickupMarked event);

    /** Told of {@link SessionEvent.SoundMeasured}. */
    void soundMeasured(SessionEvent.SoundMeasured event);

    /** Told of {@link SessionEvent.SamplesLost}. */
    void samplesLost(SessionEvent.SamplesLost event);

    /** Told of {@link SessionEvent.SourceLost}. */
    void sourceLost(SessionEvent.SourceLost event);

    /** Told of {@link SessionEvent.SourceFound}. */
    void sourceFound(SessionEvent.SourceFound event);

    /** Told of {@link SessionEvent.SourceMoved}. */
    void sourceMoved(SessionEvent.SourceMoved event);

    /** Told of {@link SessionEvent.RecordingFailed}. */
    void recordingFailed(SessionEvent.RecordingFailed event);

    /** Told of {@link SessionEvent.RecordingResumed}. */
    void recordingResumed(SessionEvent.RecordingResumed event);

    /** Told of {@link SessionEvent.SoundNotSaved}. */
    void soundNotSaved(SessionEvent.SoundNotSaved event);

    /** Told of {@link SessionEvent.Held}. */
    void held(SessionEvent.Held event);

    /** Told of {@link SessionEvent.Resumed}. */
    void resumed(SessionEvent.Resumed event);

    /** Told of {@link SessionEvent.CountInStepped}. */
    void countInStepped(SessionEvent.CountInStepped event);

    /** Told of {@link SessionEvent.RoundMoved}. */
    void roundMoved(SessionEvent.RoundMoved event);

    /** Told of {@link SessionEvent.Remarked}. */
    void remarked(SessionEvent.Remarked event);
}
