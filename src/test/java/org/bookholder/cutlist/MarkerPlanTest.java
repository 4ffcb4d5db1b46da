package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Where the directions of a script are marked in its cut. */
final class MarkerPlanTest {
    @Test
    void aDirectionIsMarkedAtTheFirstWordAfterIt() throws ProblemException {
        assertThat(markers(complete(1, 1, 1, 6, 1, 3), complete(1, 2, 2, 4, 3.5, 5), complete(1, 3, 3, 3, 6, 8)))
                .containsExactly("1: Hold up the wheel 0.1", "3: Turn it over 5.1", "3: Smile 7.2");
    }

    @Test
    void theDirectionsOfALineWithoutAnAttemptAreMarkedInItsGap() throws ProblemException {
        assertThat(markers(complete(1, 1, 1, 6, 1, 3), complete(1, 2, 2, 4, 3.5, 5)))
                .startsWith("1: Hold up the wheel 0.1", "3: Turn it over 0.0")
                .hasSize(3);
    }

    private static List<String> markers(Attempt... attempts) throws ProblemException {
        List<SessionEvent> take =
                List.of(rolled(1, 0), cut(1, 30), new SessionEvent.TakeSettled(s(30), 1, List.of(attempts), List.of()));
        SessionState state = Session.apply(Session.begin(script(), FatigueLimits.defaults()), take);
        List<String> markers = new ArrayList<>();
        for (CutItem item : CutPlanner.plan(state, new CutRules(s(0.1), s(0.1), s(2), false), TakeSound.NONE)
                .items()) {
            item.markers().stream()
                    .filter(marker -> marker.kind() == CutMarker.Kind.DIRECTION)
                    .forEach(marker -> markers.add(
                            marker.line() + ": " + marker.direction().orElseThrow() + " "
                                    + marker.offset().seconds()));
        }
        return markers;
    }

    private static Script script() {
        Script plain = Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.", "Rest your hands.");
        List<ScriptElement> elements = new ArrayList<>(plain.elements());
        elements.add(2, new Direction("Turn it over", 0, 3));
        elements.add(0, new Direction("Hold up the wheel", 0, 1));
        elements.add(new Direction("Smile", 0, 5));
        return new Script(plain.title(), plain.source(), plain.settings(), elements);
    }
}
