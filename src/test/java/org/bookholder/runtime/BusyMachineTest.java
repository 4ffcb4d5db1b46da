package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.Outcome;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Trouble;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.junit.jupiter.api.Test;

/** A machine too busy for both ears: the open ear yields, and if the position is late all the same, that is said until it keeps up. */
final class BusyMachineTest {
    private static final Script SCRIPT =
            Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.", "Then lace the first side.");
    private static final Spoken VOICE = voice(12);

    /** The script ear gets blocks of 40 ms. */
    private static final Duration TOO_LONG_FOR_A_BLOCK = Duration.ofMillis(80);

    private final ReadingRig rig = new ReadingRig(SCRIPT, VOICE.hypotheses(), true);

    @Test
    void nothingIsSaidWhileThePositionKeepsUp() {
        assertThat(saidOverTheReading()).containsExactly(false);
    }

    @Test
    void aSlowOpenEarDoesNotMakeThePositionLate() {
        rig.takesLong("open ear", Duration.ofMillis(900));
        assertThat(saidOverTheReading()).containsExactly(false);
    }

    @Test
    void aLatePositionIsSaidOnceUntilItKeepsUpAgain() {
        rig.takesLong("script ear", TOO_LONG_FOR_A_BLOCK, 4);
        assertThat(saidOverTheReading()).containsExactly(false, true, false);
    }

    /** Without a microphone there is no voice that the position could be behind. */
    @Test
    void nothingIsSaidWhileNobodyIsListenedTo() {
        rig.hasNoMicrophone();
        rig.takesLong("script ear", TOO_LONG_FOR_A_BLOCK, 4);
        assertThat(saidOverTheReading()).containsExactly(false);
    }

    @Test
    void whatTheOpenEarLeftIsJudgedWhenItHasCaughtUp() {
        rig.takesLong("script ear", TOO_LONG_FOR_A_BLOCK, 4);
        saidOverTheReading();
        assertThat(rig.reading().state().get().lines().all().stream().map(LineNotes::outcome))
                .containsOnly(Outcome.CLEAN);
    }

    /** The script ear's queue holds a minute of sound; most of what comes after that is skipped. */
    @Test
    void theOpenEarDoesNotWaitForSoundThatTheScriptEarSkipped() {
        rig.takesLong("script ear", Duration.ofSeconds(10), 70);
        Spoken longer = voice(60);
        Reading reading = rig.begin(
                new PacedSource(FakeAudioSource.of(ReadingRig.RATE, longer.sound(ReadingRig.RATE)), rig.clock));
        rig.pass(90);
        assertThat(reading.progress().unheard().seconds()).isGreaterThan(1);
        assertThat(reading.state().get().lines().all().stream().map(LineNotes::outcome))
                .containsOnly(Outcome.CLEAN);
    }

    @Test
    void theSentenceGoesWithTheTake() {
        rig.takesLong("script ear", TOO_LONG_FOR_A_BLOCK);
        Reading reading = rig.begin(voice());
        rig.pass(4);
        assertThat(said(reading)).isTrue();
        rig.pass(60);
        assertThat(reading.state().get().takes().rolling()).isFalse();
        assertThat(said(reading)).isFalse();
    }

    /** Whether the sentence was shown, each change of it. */
    private List<Boolean> saidOverTheReading() {
        Reading reading = rig.begin(voice());
        List<Boolean> said = new ArrayList<>();
        for (double second = 0; second < VOICE.seconds(); second += 0.1) {
            boolean now = said(reading);
            if (said.isEmpty() || said.get(said.size() - 1) != now) {
                said.add(now);
            }
            rig.pass(0.1);
        }
        return said;
    }

    private static boolean said(Reading reading) {
        return reading.state().get().troubles().all().stream()
                .anyMatch(trouble -> trouble.kind() == Trouble.Kind.BEHIND);
    }

    private static Spoken voice(double pause) {
        return new Spoken(0.5)
                .says("every wheel begins with its hub")
                .says("count the spokes twice")
                .says("then lace the first side")
                .pauses(pause);
    }

    private PacedSource voice() {
        return new PacedSource(FakeAudioSource.of(ReadingRig.RATE, VOICE.sound(ReadingRig.RATE)), rig.clock);
    }
}
