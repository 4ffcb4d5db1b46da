package org.bookholder.runtime.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class OptionalWorkTest {
    private final List<StageFault> faults = new ArrayList<>();
    private final OptionalWork work = new OptionalWork("sound watch", faults::add);
    private int calls;

    @Test
    void returnsTheResultOfTheWork() {
        assertThat(work.get(() -> "level", "none")).isEqualTo("level");
        assertThat(faults).isEmpty();
    }

    @Test
    void isDroppedAfterItsFirstFaultWhichIsReportedOnce() {
        for (int i = 0; i < 3; i++) {
            assertThat(work.get(this::fail, "none")).isEqualTo("none");
        }
        assertThat(work.get(() -> "level", "none")).isEqualTo("none");
        assertThat(calls).isEqualTo(1);
        assertThat(faults).singleElement().satisfies(fault -> {
            assertThat(fault.role()).isEqualTo("sound watch");
            assertThat(fault.consequence()).isEqualTo(StageFault.Consequence.GIVEN_UP);
            assertThat(fault.cause()).hasMessage("planted");
        });
    }

    private String fail() {
        calls++;
        throw new IllegalStateException("planted");
    }
}
