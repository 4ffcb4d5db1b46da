package org.bookholder.sound;

import java.util.Arrays;
import org.bookholder.speech.AudioBlock;

/** Collects the sound for a sound check: first the room, then the voice. Confined to one thread. */
public final class CheckRecording {
    private static final float FULL_SCALE = 32_768;

    private final int rate;
    private final int settling;
    private final float[] room;
    private final float[] voice;
    private int heard;

    /**
     * Creates an empty recording.
     *
     * @param rate samples a second
     * @param settling seconds to leave out before each of the two, so that people can get ready
     * @param room seconds of room sound
     * @param voice the most seconds of voice
     */
    public CheckRecording(int rate, double settling, double room, double voice) {
        this.rate = rate;
        this.settling = (int) (settling * rate);
        this.room = new float[(int) (room * rate)];
        this.voice = new float[(int) (voice * rate)];
    }

    /** Takes in a block at that rate; returns whether more audio is needed. */
    public boolean hear(AudioBlock block) {
        for (short sample : block.samples()) {
            int inRoom = heard - settling;
            int inVoice = inRoom - room.length - settling;
            if (inRoom >= 0 && inRoom < room.length) {
                room[inRoom] = sample / FULL_SCALE;
            } else if (inVoice >= 0 && inVoice < voice.length) {
                voice[inVoice] = sample / FULL_SCALE;
            }
            heard++;
        }
        return heard < 2 * settling + room.length + voice.length;
    }

    /** Whether enough of the room has been heard. */
    public boolean roomHeard() {
        return heard >= settling + room.length;
    }

    /** How many seconds of voice were heard. */
    public double voiceSeconds() {
        return (double) voiceSamples() / rate;
    }

    private int voiceSamples() {
        return Math.max(0, Math.min(voice.length, heard - 2 * settling - room.length));
    }

    /** The result. Call it only when the room has been heard and there is at least a second of voice. */
    public SoundCheck check() {
        return new SoundCheck(RoomReading.of(room, rate), VoiceReading.of(Arrays.copyOf(voice, voiceSamples()), rate));
    }
}
