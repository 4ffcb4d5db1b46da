package org.bookholder.follow.settle;

import java.util.List;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/** Decides what was read in a take, or in a part of it. Confined to one thread. */
public interface Settler {
    /** Creates settlers. */
    interface Factory {
        /** Creates a settler for the audio from {@code start} on, read from {@code word} on. */
        Settler begin(StreamTime start, int word);
    }

    /** The explanations of where in the script the reader is. */
    Beam beam();

    /** Takes in final words of either ear and returns the attempts that could be judged. */
    List<Attempt> hear(Hypothesis.Final words);

    /**
     * Judges what the reader left unfinished once it has been quiet for long enough; returns the attempts that are new or
     * have changed.
     *
     * @param to nothing was said from the last final words to this time
     */
    List<Attempt> quiet(StreamTime to);

    /** The asides so far, in order of time; the last ones may still turn out to be part of a line. */
    List<Aside> asides();

    /** Continues the reading at another word. */
    void move(int word);

    /** Ignores speech from now on. */
    void hold(StreamTime at);

    /** Stops ignoring speech. */
    void resume(StreamTime at);

    /** Decides everything that is still open. */
    FollowEvent.TakeSettled finish(StreamTime at);
}
