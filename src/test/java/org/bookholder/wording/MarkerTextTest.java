package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.CutMarker;
import org.bookholder.cutlist.CutMarker.Kind;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.session.Decision.Choice;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class MarkerTextTest {
    private static final SessionState READ = Session.apply(
            Session.begin(
                    Scripts.of(
                            "Every wheel begins with its hub.",
                            "Count the spokes before you go on.",
                            "Then lace the first side."),
                    FatigueLimits.defaults()),
            List.of(
                    rolled(1, 0),
                    settled(complete(1, 1, 1, 6, 1, 3)),
                    settled(complete(1, 2, 2, 7, 4, 7, swapped(3, "spokes", "folks")))));

    @Test
    void aPickupTellsWhatWasSaidInstead() {
        assertThat(text(READ, Kind.PICKUP, 2))
                .isEqualTo("pickup, line 2, misread: \u201cfolks\u201d for \u201cspokes\u201d"
                        + " (Count the spokes before you go \u2026)");
    }

    @Test
    void aLineNotReachedIsNotCalledSkipped() {
        assertThat(text(READ, Kind.PICKUP, 3)).isEqualTo("pickup, line 3, not read yet (Then lace the first side.)");
    }

    @Test
    void aMarkedCleanLineTellsTheMark() {
        SessionState marked = Session.apply(READ, new SessionEvent.PickupMarked(s(19), 1, "a door slammed"));
        assertThat(text(marked, Kind.PICKUP, 1))
                .isEqualTo("pickup, line 1, clean; a door slammed (Every wheel begins with its hub.)");
    }

    @Test
    void aNoteDoesNotRepeatAMarkThatWasSettled() {
        SessionState read = Session.apply(
                READ,
                List.of(
                        new SessionEvent.PickupMarked(s(8), 1, "sound dropped out"),
                        settled(complete(1, 3, 1, 6, 9, 11)),
                        new SessionEvent.Remarked(s(12), new Remark.Noted(1, "show the hub", false))));
        assertThat(text(read, Kind.NOTE, 1)).isEqualTo("note, line 1: show the hub (Every wheel begins with its hub.)");
    }

    @Test
    void aLineToFixTellsTheDecision() {
        SessionState decided =
                Session.apply(READ, new SessionEvent.Remarked(s(9), new Remark.Decided(2, Choice.FIX_IN_EDIT, 1, 2)));
        assertThat(text(decided, Kind.FIX, 2))
                .isEqualTo("fix in the edit, line 2, misread: \u201cfolks\u201d for \u201cspokes\u201d"
                        + " (Count the spokes before you go \u2026)");
    }

    @Test
    void anAsideTellsWhatWasSaid() {
        Aside aside = new Aside(1, s(3.4), s(4.4), "was that the post", 1);
        assertThat(MarkerText.of(READ, new CutMarker(Kind.ASIDE, s(2), 1, Optional.of(aside))))
                .isEqualTo("aside, take 1, not used: \u201cwas that the post\u201d");
    }

    @Test
    void aDirectionIsCalledOne() {
        CutMarker marker = new CutMarker(Kind.DIRECTION, s(2), 1, Optional.empty(), Optional.of("hold up the hub"));
        assertThat(MarkerText.of(READ, marker)).isEqualTo("direction: hold up the hub");
    }

    private static String text(SessionState state, Kind kind, int line) {
        return MarkerText.of(state, new CutMarker(kind, s(0), line, Optional.empty()));
    }
}
