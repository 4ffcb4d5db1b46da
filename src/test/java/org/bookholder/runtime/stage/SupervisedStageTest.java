package org.bookholder.runtime.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;

/** What follows a fault, in virtual time. */
final class SupervisedStageTest implements FaultListener {
    private final FakeClock clock = new FakeClock();
    private final List<String> calls = new ArrayList<>();
    private final ManualScheduler crew = new ManualScheduler(clock, this);
    private int faults;

    @Test
    void restartsARestartableStageWithGrowingGapsAndThenGivesItUp() {
        faults = 6;
        crew.takeOn(new Failing(Criticality.RESTARTABLE));
        List<Long> starts = new ArrayList<>();
        for (long millis = 0; millis <= 20_000; millis += 100) {
            crew.runUntilIdle(100);
            for (String call : calls) {
                if (call.equals("start")) {
                    starts.add(millis);
                }
            }
            calls.removeIf(call -> call.equals("start"));
            clock.passMillis(100);
        }
        assertThat(starts).containsExactly(0L, 500L, 1500L, 3500L, 7500L, 15_500L);
        assertThat(calls)
                .containsExactly(
                        "close",
                        "RESTARTS",
                        "close",
                        "RESTARTS",
                        "close",
                        "RESTARTS",
                        "close",
                        "RESTARTS",
                        "close",
                        "RESTARTS",
                        "close",
                        "given up",
                        "GIVEN_UP");
        assertThat(crew.roles()).isEmpty();
    }

    @Test
    void reportsWhenARestartedStageWorks() {
        faults = 1;
        crew.takeOn(new Failing(Criticality.RESTARTABLE));
        pass(10_400);
        assertThat(calls).containsExactly("start", "close", "RESTARTS", "start");
        pass(200);
        assertThat(calls).containsExactly("start", "close", "RESTARTS", "start", "recovered");
        pass(60_000);
        assertThat(calls).hasSize(5);
    }

    @Test
    void hasAllItsTriesAgainAfterItRanWellForTenMinutes() {
        crew.takeOn(new Failing(Criticality.RESTARTABLE));
        for (int i = 0; i < 7; i++) {
            faults = 1;
            pass(11 * 60_000);
        }
        assertThat(calls).doesNotContain("GIVEN_UP");
        assertThat(calls.stream().filter("RESTARTS"::equals)).hasSize(7);
    }

    @Test
    void isGivenUpIfItFailsEveryNineMinutes() {
        crew.takeOn(new Failing(Criticality.RESTARTABLE));
        for (int i = 0; i < 6; i++) {
            faults = 1;
            pass(9 * 60_000);
        }
        assertThat(calls).last().isEqualTo("GIVEN_UP");
    }

    @Test
    void continuesWithoutAnOptionalStage() {
        faults = 1;
        crew.takeOn(new Failing(Criticality.OPTIONAL));
        pass(60_000);
        assertThat(calls).containsExactly("start", "close", "given up", "GIVEN_UP");
    }

    @Test
    void neverRestartsAnEssentialStage() {
        faults = 1;
        crew.takeOn(new Failing(Criticality.ESSENTIAL));
        pass(60_000);
        assertThat(calls).containsExactly("start", "close", "SESSION_ENDS");
    }

    @Test
    void closesAStageThatIsStoppedOnceAndNotWhileItWaitsForItsRestart() {
        faults = 1;
        crew.takeOn(new Failing(Criticality.RESTARTABLE));
        pass(100);
        crew.stop();
        pass(60_000);
        assertThat(calls).containsExactly("start", "close", "RESTARTS");
    }

    @Override
    public void failed(StageFault fault) {
        assertThat(fault.role()).isEqualTo("failing");
        assertThat(fault.cause()).hasMessage("planted");
        calls.add(fault.consequence().name());
    }

    @Override
    public void recovered(String role) {
        calls.add("recovered");
    }

    private void pass(long millis) {
        for (long done = 0; done < millis; done += 100) {
            crew.runUntilIdle(100);
            clock.passMillis(100);
        }
        crew.runUntilIdle(100);
    }

    private final class Failing implements Stage {
        private final Criticality criticality;

        Failing(Criticality criticality) {
            this.criticality = criticality;
        }

        @Override
        public String role() {
            return "failing";
        }

        @Override
        public Criticality criticality() {
            return criticality;
        }

        @Override
        public void onStart() {
            calls.add("start");
        }

        @Override
        public int doWork() {
            if (faults > 0) {
                faults--;
                throw new IllegalStateException("planted");
            }
            return 0;
        }

        @Override
        public void onClose() {
            calls.add("close");
        }

        @Override
        public void onGivenUp() {
            calls.add("given up");
        }
    }
}
