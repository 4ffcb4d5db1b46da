package org.bookholder.sound;

import java.util.Arrays;
import java.util.List;
import org.bookholder.speech.AudioBlock;

/** Collects the sound for a sound check: first the room, then the voice. Confined to one thread. */
public final class CheckRecording {
    private static final float FULL_SCALE = 32_768;

    private final int rate;
    private final int settling;
    private final Channel mixed;
    private final Channel left;
    private final Channel right;
    private boolean twoSides;
    private int heard;

    /** The samples of one channel, or of their mix; full scale is 1. */
    private static final class Channel {
        private final float[] room;
        private final float[] voice;

        Channel(int room, int voice) {
            this.room = new float[room];
            this.voice = new float[voice];
        }
    }

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
        mixed = new Channel((int) (room * rate), (int) (voice * rate));
        left = new Channel(mixed.room.length, mixed.voice.length);
        right = new Channel(0, mixed.voice.length);
    }

    /** Takes in a block at that rate, with both sides if it keeps them; returns whether more audio is needed. */
    public boolean hear(AudioBlock block) {
        List<short[]> sides = block.sides();
        twoSides |= !sides.isEmpty();
        for (int i = 0; i < block.samples().length; i++) {
            put(mixed, block.samples()[i]);
            if (!sides.isEmpty()) {
                put(left, sides.get(0)[i]);
                put(right, sides.get(1)[i]);
            }
            heard++;
        }
        return heard < 2 * settling + mixed.room.length + mixed.voice.length;
    }

    private void put(Channel channel, short sample) {
        int inRoom = heard - settling;
        int inVoice = inRoom - mixed.room.length - settling;
        if (inRoom >= 0 && inRoom < channel.room.length) {
            channel.room[inRoom] = sample / FULL_SCALE;
        } else if (inVoice >= 0 && inVoice < channel.voice.length) {
            channel.voice[inVoice] = sample / FULL_SCALE;
        }
    }

    /** Whether enough of the room has been heard. */
    public boolean roomHeard() {
        return heard >= settling + mixed.room.length;
    }

    /** How many seconds of voice were heard. */
    public double voiceSeconds() {
        return (double) voiceSamples() / rate;
    }

    private int voiceSamples() {
        return Math.max(0, Math.min(mixed.voice.length, heard - 2 * settling - mixed.room.length));
    }

    /**
     * The result. Call it only when the room has been heard and there is at least a second of voice. What two sides that cancel each
     * other leave of a voice says nothing of it, so the left one is measured then.
     */
    public SoundCheck check() {
        Sides.Kind sides = twoSides ? Sides.of(spoken(left), spoken(right), rate) : Sides.Kind.BOTH;
        Channel measured = sides == Sides.Kind.OPPOSED ? left : mixed;
        float[] voice = spoken(measured);
        RoomReading room = RoomReading.of(measured.room, rate);
        VoiceReading heard = VoiceReading.of(voice, rate);
        // What is cut off on one side is not at full scale in the mix.
        VoiceReading reading = twoSides
                ? heard.withClipped(Math.max(ClippedRuns.in(spoken(left)), ClippedRuns.in(spoken(right))))
                : heard;
        return new SoundCheck(
                room,
                reading,
                RoomNoise.of(measured.room, rate, room.hum()),
                SoundPath.of(sides, measured.room, voice, rate));
    }

    private float[] spoken(Channel channel) {
        return Arrays.copyOf(channel.voice, voiceSamples());
    }
}
