package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.bookholder.bench.ReadingRun.Ended;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.LineNotes;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Sounds that are not a clean reading, heard by the real ears. None may lose the take or move the position to a wrong
 * place.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
final class HardSoundTest {
    private static final Path MODEL =
            Path.of(System.getProperty("bookholder.home")).resolve("models/vosk-model-en-us");
    private static final Flite PRESENTER = new Flite("rms", 1.1);
    private static final Flite ANOTHER = new Flite("slt", 1.0);
    private static final List<String> LINES = List.of(
            "turn the wheel slowly and watch the gap beside the brake",
            "a spoke that rings low is loose and wants half a turn",
            "count the threads before you tighten anything near the valve",
            "check both sides again with the lamp behind the rim");
    private static final String SCRIPT = "---\nlines: as-written\n---\n" + String.join("\n", LINES) + "\n";
    private static final String ELSEWHERE =
            "my sister called again about dinner on friday and she says we need two more chairs";

    private final VoskEars ears;
    private final List<short[]> spoken;

    HardSoundTest() throws ProblemException {
        Needs.file(MODEL, "unpacked by the build");
        Needs.program("flite", "Debian package flite");
        ears = VoskEars.load(MODEL);
        spoken = LINES.stream().map(PRESENTER::say).toList();
    }

    @AfterAll
    void close() {
        ears.close();
    }

    @Test
    void readingAnotherTextIsNotReadingTheScript() {
        short[] other = ANOTHER.say(ELSEWHERE);
        Ended ended = read(room(1), other, room(1), other, room(1), spoken.get(0), room(1));
        Findings found = Findings.of(ended);
        double before = 2.5 + 2.0 * other.length / Sound.RATE;
        assertThat(found.moves()).filteredOn(m -> m.at() < before).allMatch(m -> m.line() == 1);
        assertThat(ended.state().lines().all())
                .extracting(LineNotes::outcome)
                .containsExactly(Outcome.CLEAN, Outcome.SKIPPED, Outcome.SKIPPED, Outcome.SKIPPED);
        assertThat(ended.state().lines().asides()).isNotEmpty();
    }

    @Test
    void musicBetweenLinesIsNotTakenForSpeech() {
        Ended ended = read(
                room(1),
                spoken.get(0),
                room(0.5),
                Music.play(20, new Random(1)),
                room(0.5),
                spoken.get(1),
                room(0.5),
                spoken.get(2),
                room(1));
        double musicEnds = 2 + (double) spoken.get(0).length / Sound.RATE + 20;
        assertThat(Findings.of(ended).moves())
                .filteredOn(m -> m.at() < musicEnds)
                .allMatch(m -> m.line() <= 2);
        assertThat(ended.state().lines().all())
                .extracting(LineNotes::outcome)
                .containsExactly(Outcome.CLEAN, Outcome.CLEAN, Outcome.CLEAN, Outcome.SKIPPED);
    }

    @Test
    void aSecondVoiceInTheRoomDoesNotCarryThePositionOff() {
        short[] reading = joined(
                room(1),
                spoken.get(0),
                room(0.5),
                spoken.get(1),
                room(0.5),
                spoken.get(2),
                room(0.5),
                spoken.get(3),
                room(1));
        short[] other = ANOTHER.say(ELSEWHERE);
        short[] chatter = joined(other, other, other, other, room(30));
        Ended ended = read(Sound.mixed(reading, Sound.asDoubles(chatter), 0.3));
        // The end of the last line may be drowned; all before it must be found.
        assertThat(ended.state().following().position().line()).isGreaterThanOrEqualTo(LINES.size());
        assertThat(Findings.of(ended).moves()).extracting(Findings.Move::line).isSorted();
        assertThat(ended.state().lines().all()).allMatch(l -> l.outcome() != Outcome.SKIPPED);
    }

    @Test
    void noisesOfASetAreNotTakenForReadingOrAsides() {
        Random random = new Random(5);
        Ended ended = read(
                room(0.5),
                SetSounds.clap(random),
                room(0.7),
                SetSounds.beep(),
                room(0.8),
                spoken.get(0),
                room(0.5),
                SetSounds.cough(random),
                room(0.6),
                spoken.get(1),
                room(0.4),
                SetSounds.page(random),
                room(0.5),
                spoken.get(2),
                room(0.6),
                SetSounds.laughter(random),
                room(0.6),
                spoken.get(3),
                room(1));
        assertThat(ended.state().lines().all()).allMatch(l -> l.outcome() == Outcome.CLEAN);
        assertThat(ended.state().lines().all()).allMatch(l -> l.attempts().size() == 1);
        assertThat(ended.state().lines().asides()).isEmpty();
        assertThat(Findings.of(ended).moves()).extracting(Findings.Move::line).isSorted();
    }

    @Test
    void mumbledLineEndsAreFollowedAndNotReportedAsBrokenOff() {
        Ended ended = read(
                room(1),
                SetSounds.mumbled(spoken.get(0)),
                room(0.6),
                SetSounds.mumbled(spoken.get(1)),
                room(0.6),
                SetSounds.mumbled(spoken.get(2)),
                room(0.6),
                SetSounds.mumbled(spoken.get(3)),
                room(1));
        assertThat(ended.state().lines().all()).allMatch(l -> l.outcome() == Outcome.CLEAN);
    }

    /** Long enough for each ear to end some twenty utterances by itself. */
    @Test
    void threeMinutesOfAQuietRoomMoveNothing() {
        Ended ended = read(room(180));
        assertThat(ended.state().following().position().line()).isEqualTo(1);
        assertThat(ended.state().lines().asides()).isEmpty();
        assertThat(ended.state().takes().all()).hasSize(1);
    }

    private Ended read(short[]... parts) {
        return ReadingRun.read(SCRIPT, FakeAudioSource.of(Sound.RATE, joined(parts)), ears);
    }

    private static short[] room(double seconds) {
        return Noise.room(seconds, new Random(7));
    }

    private static short[] joined(short[]... parts) {
        return Sound.joined(List.of(parts));
    }
}
