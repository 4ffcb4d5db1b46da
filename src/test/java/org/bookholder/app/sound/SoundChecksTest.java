package org.bookholder.app.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.app.sound.SoundChecks.Step;
import org.bookholder.journal.SessionLocks;
import org.bookholder.runtime.stage.Helpers;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeEquipment;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SoundChecksTest {
    private final FakeClock clock = new FakeClock();

    @TempDir
    private Path folder;

    private SoundChecks checks;

    @BeforeEach
    void prepare() {
        checks = new SoundChecks(new Environment(
                clock,
                clock,
                ZoneOffset.UTC,
                folder,
                folder,
                folder,
                new SessionLocks(),
                new Warnings(line -> {}),
                new Helpers(1),
                new FakeEquipment()));
    }

    @Test
    void theMicrophoneIsLetGoWhenTheCheckIsKnownToGoOn() {
        List<Boolean> known = new ArrayList<>();
        checks.begin(Optional.empty(), () -> known.add(checks.status().goesOn()));
        checks.begin(Optional.empty(), () -> known.add(false));
        assertThat(known).as("once, and not for a check that goes on").containsExactly(true);
    }

    @Test
    void aMicrophoneThatIsNotLetGoLeavesNoCheck() {
        IllegalStateException held = new IllegalStateException("held");
        assertThatThrownBy(() -> checks.begin(Optional.empty(), () -> {
                    throw held;
                }))
                .isSameAs(held);
        assertThat(checks.status().step()).isEqualTo(Step.NONE);
        assertThat(checks.doWork()).as("nothing was asked for").isZero();
    }
}
