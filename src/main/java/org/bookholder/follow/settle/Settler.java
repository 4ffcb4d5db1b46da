package org.bookholder.follow.settle;

import java.util.List;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;

/** Decides what was read in a take, or in a part of it. Confined to one thread. */
public interface Settler {
    /** Begins a part of a take. */
    interface Factory {
        /** A settler of what is heard from {@code start} on, read from {@code word} on. */
        Settler begin(StreamTime start, int word);
    }

    /** What is believed of the place in the script. */
    Beam beam();

    /** Takes in final words of either ear and returns the attempts that could be judged. */
    List<Attempt> hear(Hypothesis.Final words);

    /** Lets reading go on at another word. */
    void move(int word);

    /** Leaves out what is said from now on. */
    void hold(StreamTime at);

    /** Takes in again what is said from now on. */
    void resume(StreamTime at);

    /** Settles everything. */
    FollowEvent.TakeSettled finish(StreamTime at);
}
