package org.bookholder.runtime.take;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.bookholder.runtime.take.EvidenceOrder.Evidence;
import org.bookholder.runtime.take.EvidenceOrder.Kind;
import org.bookholder.speech.EarKind;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class EvidenceOrderTest {
    private final Evidence script = evidence(1, Kind.SCRIPT_EAR);
    private final Evidence open = evidence(1, Kind.OPEN_EAR);
    private final Evidence levels = evidence(1, Kind.LEVELS);

    @Test
    void passesLiveEvidenceAtOnce() {
        EvidenceOrder order = new EvidenceOrder(Set.of());
        assertThat(order.add(script)).containsExactly(script);
        assertThat(order.add(open)).containsExactly(open);
    }

    @Test
    void waitsUntilEveryEarHasHeardAsFar() {
        EvidenceOrder order = new EvidenceOrder(EnumSet.allOf(EarKind.class));
        assertThat(order.add(script)).isEmpty();
        assertThat(order.heardTo(EarKind.SCRIPT, at(2))).isEmpty();
        assertThat(order.heardTo(EarKind.OPEN, at(0.9))).isEmpty();
        assertThat(order.heardTo(EarKind.OPEN, at(1))).containsExactly(script);
    }

    @Test
    void sortsEvidenceOfTheSameMomentAlwaysTheSameWay() {
        EvidenceOrder order = new EvidenceOrder(EnumSet.allOf(EarKind.class));
        order.add(script);
        order.add(levels);
        order.add(open);
        order.heardTo(EarKind.SCRIPT, at(1));
        assertThat(order.heardTo(EarKind.OPEN, at(1))).containsExactly(levels, open, script);
    }

    @Test
    void doesNotWaitForAnEarThatHasEnded() {
        EvidenceOrder order = new EvidenceOrder(EnumSet.allOf(EarKind.class));
        order.heardTo(EarKind.SCRIPT, at(1));
        order.add(script);
        assertThat(order.done(EarKind.OPEN)).containsExactly(script);
    }

    private static Evidence evidence(double seconds, Kind kind) {
        return new Evidence(at(seconds), kind, follower -> List.of());
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
