package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.bookholder.handoff.NotesJsonExporter;
import org.bookholder.handoff.TraceExporter;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.speech.AudioSource;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Golden;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.junit.jupiter.api.Test;

/** What the ears believe in, notes and trace out, in virtual time. */
final class ReadingSessionTest {
    private static final Script SCRIPT = Scripts.of(
            "Every wheel begins with its hub.",
            "Count the spokes twice before you go on.",
            "Then lace the first side.",
            "Turn the wheel over and lace the other side.",
            "Leave every nipple loose for now.",
            "Tomorrow we bring it back to true.");
    private static final Spoken VOICE = new Spoken(0.6)
            .says("every wheel begins with its hub")
            .says("count the spokes")
            .pauses(0.4)
            .says("count the spokes twice before you go on")
            .says("turn the wheel over and lace the other side")
            .pauses(2)
            .says("leave every nipple loose for tonight")
            .says("tomorrow we bring it back to true")
            .pauses(1);

    @Test
    void aReadingWithASkippedLineARestartAndASwappedWordGivesTheExpectedEvents() throws IOException {
        Golden.assertMatches("e2e/reading-session.txt", dump(false));
    }

    @Test
    void aFileGivesTheSameResultInRealTimeAndAtFullSpeed() throws IOException {
        assertThat(dump(true)).isEqualTo(dump(false));
    }

    private static String dump(boolean paced) throws IOException {
        ReadingRig rig = new ReadingRig(SCRIPT, VOICE.hypotheses(), false);
        AudioSource file = FakeAudioSource.of(ReadingRig.RATE, VOICE.sound(ReadingRig.RATE));
        Reading reading = rig.begin(paced ? new PacedSource(file, rig.clock) : file);
        rig.pass(paced ? VOICE.seconds() + 1 : 0.1);
        assertThat(reading.progress().over()).isTrue();
        assertThat(rig.failures).isEmpty();
        StringBuilder dump = new StringBuilder();
        new NotesJsonExporter().write(reading.state().get(), rig.journal.events(), dump);
        new TraceExporter().write(reading.state().get(), rig.journal.events(), dump);
        return dump.toString();
    }
}
