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
    void otherPeoplesTalkMovesNoBoundFarFromTheWordsThatWereHeard() {
        sounds((byte) -45, 2);
        sounds((byte) -35, 1);
        sounds(VOICE, 2);
        sounds((byte) -35, 1);
        sounds((byte) -45, 2);
        Loudness.Words whole = new Loudness.Words(at(3), at(5), true, true);
        assertThat(loudness.around(whole, at(0), at(8))).isEqualTo(new Loudness.Stretch(at(2.85), at(5.15)));
    }

    @Test
    void aWordThatWasNotHeardIsLookedForInANoisyRoomToo() {
        sounds((byte) -45, 2);
        sounds(VOICE, 3);
        sounds((byte) -45, 2);
        Loudness.Stretch bounds = loudness.around(new Loudness.Words(at(2.5), at(4.5), false, true), at(0), at(7));
        assertThat(bounds).isEqualTo(new Loudness.Stretch(at(1.95), at(4.65)));
        bounds = loudness.around(new Loudness.Words(at(2.5), at(4.5), true, false), at(0), at(7));
        assertThat(bounds).isEqualTo(new Loudness.Stretch(at(2.35), at(5.05)));
    }

    @Test
    void inAQuietRoomAVoiceIsFollowedToItsEnd() {
        sounds(ROOM, 2);
        sounds((byte) -40, 0.5);
        sounds(VOICE, 2);
        sounds((byte) -40, 0.5);
        sounds(ROOM, 2);
        Loudness.Words whole = new Loudness.Words(at(2.6), at(4.4), true, true);
        assertThat(loudness.around(whole, at(0), at(7))).isEqualTo(new Loudness.Stretch(at(1.95), at(5.05)));
    }

    @Test
    void theLevelOfAStretchIsThatOfItsLoudFrames() {
        sounds(ROOM, 1);
        sounds(VOICE, 0.2);
        sounds((byte) -30, 0.8);
        assertThat(loudness.loud(at(1), at(2))).hasValue(VOICE);
        assertThat(loudness.loud(at(1.15), at(2))).hasValue(-30);
        assertThat(loudness.loud(at(0), at(1))).hasValue(ROOM);
        assertThat(loudness.loud(at(2), at(3))).isEmpty();
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
