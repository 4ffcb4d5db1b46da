package org.bookholder.follow.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.bookholder.speech.FrameLevels;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class LoudnessTest {
    private static final byte ROOM = -60;
    private static final byte VOICE = -20;

    private final Loudness loudness = new Loudness(StreamTime.ZERO);
    private double now;

    @Test
    void knowsNothingBeforeItHearsAnything() {
        assertThat(loudness.unknown()).isTrue();
        sounds(ROOM, 0.1);
        assertThat(loudness.unknown()).isFalse();
    }

    @Test
    void countsHowLongOnlyTheRoomIsHeard() {
        sounds(ROOM, 2);
        sounds(VOICE, 3);
        assertThat(loudness.quiet()).isEqualTo(StreamTime.ZERO);
        sounds(ROOM, 0.3);
        assertThat(loudness.quiet()).isEqualTo(at(0.3));
    }

    @Test
    void aLoudRoomCountsAsTheRoom() {
        sounds((byte) -35, 2);
        sounds(VOICE, 3);
        sounds((byte) -35, 0.3);
        assertThat(loudness.quiet()).isEqualTo(at(0.3));
    }

    @Test
    void boundsReachFromTheSilenceBeforeToTheSilenceAfterWithALittleMargin() {
        sounds(ROOM, 2);
        sounds(VOICE, 2);
        sounds(ROOM, 2);
        Loudness.Stretch bounds = loudness.around(at(2.1), at(3.8), at(0), at(6));
        assertThat(bounds).isEqualTo(new Loudness.Stretch(at(1.95), at(4.05)));
    }

    @Test
    void wordsWithoutAnySoundAtTheBeginningOfATakeKeepTheirTimes() {
        sounds(ROOM, 1);
        sounds(VOICE, 2);
        assertThat(loudness.around(at(0), at(0.1), at(0), at(3))).isEqualTo(new Loudness.Stretch(at(0), at(0.1)));
    }

    @Test
    void boundsBridgeTheClosureOfAStopConsonantAndNoMore() {
        sounds(ROOM, 2);
        sounds(VOICE, 1);
        sounds(ROOM, 0.08);
        sounds(VOICE, 0.3);
        sounds(ROOM, 0.3);
        sounds(VOICE, 1);
        sounds(ROOM, 1);
        assertThat(loudness.around(at(2), at(3), at(0), at(6)).end()).isEqualTo(at(3.43));
    }

    @Test
    void boundsOfLinesReadInOneGoDoNotRunIntoEachOther() {
        sounds(ROOM, 1);
        sounds(VOICE, 4);
        sounds(ROOM, 1);
        Loudness.Stretch bounds = loudness.around(at(2), at(3), at(1.9), at(3.2));
        assertThat(bounds).isEqualTo(new Loudness.Stretch(at(1.9), at(3.2)));
    }

    @Test
    void wordsInASteadyNoiseKeepTheirTimes() {
        sounds(VOICE, 6);
        assertThat(loudness.around(at(2), at(3), at(0), at(6))).isEqualTo(new Loudness.Stretch(at(2), at(3)));
    }

    @Test
    void aFanThatIsSwitchedOnMovesNoBound() {
        sounds(ROOM, 4);
        sounds((byte) -40, 3);
        sounds(VOICE, 2);
        sounds((byte) -40, 3);
        sounds(ROOM, 4);
        Loudness.Stretch bounds = loudness.around(at(7.1), at(8.9), at(0), at(16));
        assertThat(bounds).isEqualTo(new Loudness.Stretch(at(6.95), at(9.05)));
    }

    @Test
    void aSoftSoundJustAboveTheNoiseBelongsToTheWord() {
        sounds(ROOM, 2);
        sounds((byte) (ROOM + 3), 0.2);
        sounds(VOICE, 2);
        sounds(ROOM, 2);
        assertThat(loudness.around(at(2.3), at(4), at(0), at(6)).start()).isBetween(at(1.95), at(2));
    }

    @Test
    void boundsMoveInwardWhereTheRecogniserPutAWordIntoSilence() {
        sounds(ROOM, 2);
        sounds(VOICE, 2);
        sounds(ROOM, 2);
        Loudness.Stretch bounds = loudness.around(at(1.85), at(4.15), at(0), at(6));
        assertThat(bounds).isEqualTo(new Loudness.Stretch(at(1.95), at(4.05)));
    }

    @Test
    void aVoiceGoesOnUntilItPauses() {
        sounds(ROOM, 1);
        sounds(VOICE, 2);
        sounds(ROOM, 0.2);
        sounds(VOICE, 1);
        sounds(ROOM, 0.3);
        sounds(VOICE, 1);
        assertThat(loudness.voiceUntil(at(2), at(9))).isEqualTo(at(4.2));
        assertThat(loudness.voiceSince(at(4), at(0))).isEqualTo(at(1));
    }

    @Test
    void timesOutsideTheMeasuredStretchStayAsTheyAre() {
        sounds(VOICE, 1);
        assertThat(loudness.voiceUntil(at(5), at(9))).isEqualTo(at(5));
        assertThat(loudness.around(at(5), at(6), at(0), at(9))).isEqualTo(new Loudness.Stretch(at(5), at(6)));
    }

    private void sounds(byte level, double seconds) {
        byte[] levels = new byte[(int) Math.round(seconds * FrameLevels.PER_SECOND)];
        Arrays.fill(levels, level);
        loudness.add(new FrameLevels(at(now), levels));
        now += seconds;
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
