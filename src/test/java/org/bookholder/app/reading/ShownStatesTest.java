package org.bookholder.app.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicReference;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.session.Session;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class ShownStatesTest {
    private final SessionState first = Session.begin(Scripts.of("Every wheel has a hub"), FatigueLimits.defaults());
    private final AtomicReference<SessionState> newest = new AtomicReference<>(first);
    private final ShownStates shown =
            new ShownStates(newest::get, state -> state.with(new Trouble(Trouble.Kind.ROOM, "little room")));

    @Test
    void somethingIsAddedToEachState() {
        assertThat(shown.get().troubles().all()).extracting(Trouble::detail).containsExactly("little room");
        newest.set(first.with(new Trouble(Trouble.Kind.DESK_READY, "open it there")));
        assertThat(shown.get().troubles().all())
                .extracting(Trouble::detail)
                .containsExactlyInAnyOrder("little room", "open it there");
    }

    @Test
    void theSameStateGivesTheSameObject() {
        SessionState seen = shown.get();
        assertThat(shown.get()).isSameAs(seen);
        newest.set(first.with(new Trouble(Trouble.Kind.DESK_READY, "open it there")));
        assertThat(shown.get()).isNotSameAs(seen).isSameAs(shown.get());
    }
}
