package org.bookholder.view.gl;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Trouble;
import org.bookholder.view.SampleState;

/** The states that a presenter meets, by name. */
final class SampleStates {
    private SampleStates() {}

    /** One of them. */
    static SampleState named(String name) {
        return Objects.requireNonNull(all().get(name), name);
    }

    /** Those that need nothing but the state of a session. */
    static Map<String, SampleState> all() {
        SampleState mid = SampleState.lesson();
        SampleState pickups = mid.outcome(
                        2, Outcome.MISREAD, new Deviation(4, "first", "last", Deviation.Kind.SWAPPED, 1))
                .outcome(4, Outcome.SKIPPED);
        Map<String, SampleState> states = new LinkedHashMap<>();
        states.put("start", SampleState.of(SampleState.lessonScript()).live(Double.NaN));
        states.put("mid", mid);
        states.put("direction", pickups.at(6, 2).urgency(Urgency.COMING));
        states.put("fast", mid.live(124));
        states.put("slow", mid.live(78));
        states.put("held", mid.held(true).urgency(Urgency.DUE));
        states.put("lost", pickups.follow(FollowState.LOST));
        states.put("sound-gone", mid.sounding(-120, 0));
        states.put("overdue", pickups.at(4, 3).urgency(Urgency.OVERDUE).live(108));
        states.put("trouble", mid.trouble(new Trouble(Trouble.Kind.NO_SOUND, "the microphone was unplugged")));
        states.put("end", pickups.at(11, 1).rolling(false));
        states.put("clean-end", mid.at(11, 1).rolling(false));
        return states;
    }
}
