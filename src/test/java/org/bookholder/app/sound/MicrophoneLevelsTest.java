package org.bookholder.app.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.ZoneOffset;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.journal.SessionLocks;
import org.bookholder.runtime.stage.Helpers;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.SteadySource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class MicrophoneLevelsTest {
    private final FakeClock clock = new FakeClock();
    private final FakeEquipment equipment = new FakeEquipment();
    private final SteadySource near = new SteadySource("near", 16_384);
    private final SteadySource far = new SteadySource("far", 0);

    @TempDir
    private Path folder;

    private boolean elsewhere;
    private MicrophoneLevels levels;

    @BeforeEach
    void listen() {
        equipment.hasMicrophone(near);
        equipment.hasMicrophone(far);
        Environment here = new Environment(
                clock,
                clock,
                ZoneOffset.UTC,
                folder,
                folder,
                folder,
                new SessionLocks(),
                new Warnings(line -> {}),
                new Helpers(1),
                equipment);
        levels = new MicrophoneLevels(here, () -> elsewhere);
        clock.passMillis(1000);
    }

    @Test
    void noMicrophoneIsOpenWhileNobodyLooks() {
        work(10);
        assertThat(equipment.microphones()).containsExactly("near", "far");
        assertThat(levels.levels()).isEmpty();
    }

    @Test
    void eachMicrophoneHasItsLevelWhileSomebodyLooks() {
        levels.watch();
        work(30);
        assertThat(levels.levels()).extracting(MicrophoneLevels.Level::name).containsExactly("near", "far");
        assertThat(levels.levels().get(0).peak()).isCloseTo(-6.02, within(0.01));
        assertThat(levels.levels().get(1).peak()).isEqualTo(-120);
    }

    @Test
    void theyAreClosedSomeSecondsAfterTheLastLook() {
        levels.watch();
        work(100);
        levels.watch();
        work(550);
        assertThat(near.closed()).isFalse();
        work(100);
        assertThat(near.closed()).isTrue();
        assertThat(far.closed()).isTrue();
        assertThat(levels.levels()).isEmpty();
    }

    @Test
    void theyAreClosedBeforeSomethingElseListens() {
        levels.watch();
        work(5);
        levels.letGo();
        assertThat(near.closed()).isTrue();
    }

    @Test
    void theyStayClosedWhileSomethingElseListens() {
        elsewhere = true;
        levels.watch();
        work(30);
        assertThat(equipment.microphones()).containsExactly("near", "far");
    }

    @Test
    void oneThatCannotBeHeardSaysSo() {
        equipment.hasMicrophone(new FakeAudioSource(16_000));
        equipment.hasDeadMicrophone("dead");
        levels.watch();
        work(30);
        assertThat(levels.levels()).extracting(MicrophoneLevels.Level::trouble).contains("no microphone can be opened");
    }

    @Test
    void whichOnesCouldNotBeOpenedIsStillKnownAfterwards() {
        levels.watch();
        work(30);
        levels.letGo();
        assertThat(levels.refused()).isEmpty();
        equipment.hasDeadMicrophone("dead");
        levels.watch();
        work(30);
        levels.letGo();
        assertThat(levels.refused()).contains("dead");
    }

    /** Lets the work run for this many hundredths of a second. */
    private void work(int hundredths) {
        for (int i = 0; i < hundredths; i++) {
            levels.doWork();
            clock.passMillis(10);
        }
    }
}
