package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.sound.PeakLevel;
import org.bookholder.testing.Readings;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** What the desk shows of the sound of the last seconds. */
final class LiveHistoryTest {
    private SessionState state = Session.apply(
            Session.begin(Scripts.of("Every wheel begins with its hub."), FatigueLimits.defaults()),
            Readings.rolled(1, 0));
    private LiveHistory history = LiveHistory.NONE;
    private int second;

    @Test
    void nothingIsWrongWithAUsualVoice() {
        hear(40, -25, -12);
        assertThat(history.wrong()).isEmpty();
        assertThat(history.heard()).as("half a minute is kept").hasSize(30);
        assertThat(history.heard().get(0).second()).isEqualTo(11);
        assertThat(history.heard().get(29).second()).isEqualTo(40);
        assertThat(history.pace()).as("a point for each second").hasSize(40);
    }

    @Test
    void thePeakIsHeldForFiveSeconds() {
        assertThat(history.hold()).isNaN();
        hear(1, -25, -6);
        hear(4, -25, -20);
        assertThat(history.hold()).isEqualTo(-6);
        hear(1, -25, -18);
        assertThat(history.hold()).isEqualTo(-18);
    }

    @Test
    void theRoomIsTheLowestLevelButNotDigitalSilence() {
        hear(3, -30, -20);
        hear(1, -62.5, -50);
        assertThat(history.room()).as("too little was heard").isNaN();
        hear(1, -100, -100);
        assertThat(history.room()).isEqualTo(-62.5);
    }

    @Test
    void clippingIsShownForTenSeconds() {
        hear(3, -20, -10);
        second++;
        happens(new SessionEvent.SoundMeasured(s(second), -10, 0, 5));
        assertThat(history.wrong()).isEqualTo("too loud: cut off at full scale");
        assertThat(history.since()).isEqualTo(s(4));
        hear(9, -20, -10);
        assertThat(history.wrong()).isEqualTo("too loud: cut off at full scale");
        assertThat(history.since()).as("since it was first shown").isEqualTo(s(4));
        hear(1, -20, -10);
        assertThat(history.wrong()).isEmpty();
        assertThat(history.since()).isEqualTo(s(14));
    }

    @Test
    void fiveSecondsOfSilenceMeanThatNoSoundComesIn() {
        hear(10, -25, -12);
        hear(4, -100, -90);
        assertThat(history.wrong()).isEmpty();
        hear(1, -100, -90);
        assertThat(history.wrong()).isEqualTo("no sound comes in");
    }

    @Test
    void aQuietVoiceIsCalledTooLowAfterAQuarterOfAMinute() {
        hear(14, -60, -27);
        assertThat(history.wrong()).isEmpty();
        hear(1, -60, -27);
        assertThat(history.wrong()).isEqualTo("too low");
        assertThat(history.level()).isEqualTo(PeakLevel.TOO_LOW);
        hear(1, -60, -24);
        assertThat(history.wrong()).isEmpty();
    }

    @Test
    void aVoiceThatNearlyClipsIsTooLoud() {
        hear(1, -12, -1);
        assertThat(history.wrong()).isEmpty();
        assertThat(history.level()).isEqualTo(PeakLevel.HIGH);
        hear(1, -12, -0.9);
        assertThat(history.wrong()).isEqualTo("too loud");
    }

    @Test
    void troublesComeBeforeWhatIsWrongWithTheLevel() {
        hear(15, -60, -33);
        happens(new SessionEvent.SourceLost(s(16), "unplugged"));
        assertThat(history.wrong()).startsWith("No sound comes in (unplugged)");
    }

    @Test
    void nothingIsShownOrMeasuredBetweenTakes() {
        hear(15, -60, -33);
        happens(Readings.cut(1, 16));
        assertThat(history.wrong()).isEmpty();
        assertThat(history.pace()).hasSize(15);
        assertThat(history.heard()).hasSize(15);
    }

    private void hear(int seconds, double rms, double peak) {
        for (int i = 0; i < seconds; i++) {
            second++;
            happens(new SessionEvent.SoundMeasured(s(second), rms, peak, 0));
        }
    }

    private void happens(SessionEvent event) {
        state = Session.apply(state, event);
        history = history.after(state);
    }
}
