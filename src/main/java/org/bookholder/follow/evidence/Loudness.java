package org.bookholder.follow.evidence;

import java.util.Arrays;
import java.util.OptionalInt;
import org.bookholder.speech.FrameLevels;
import org.bookholder.timing.StreamTime;

/**
 * The level of each frame of a take in the voice's band, and which frames are voice.
 *
 * <p>While a take runs, a frame is voice if it is clearly louder than the room: its level must lie a certain part of the
 * way from the quiet frames before it to the loud ones. Afterwards the bounds of what was said are looked for in {@link
 * NearbyNoise}, which is the room as it is just there.
 */
public final class Loudness {
    private static final int WINDOW = 10 * FrameLevels.PER_SECOND;
    private static final int LEVELS = 1 - FrameLevels.SILENCE;

    /** The percentiles of the levels in a window that are taken as the level of the room and as that of the voice. */
    private static final double ROOM_SHARE = 0.1;

    private static final double VOICE_SHARE = 0.9;

    /**
     * To be voice, a frame must reach this part of the way from the room's level to the voice's, and at least so many
     * dB above the room.
     */
    private static final double PART = 0.15;

    private static final int LEAST_DB = 3;

    /**
     * Frames of silence that can occur within speech: the closure of a stop consonant lasts up to a tenth of a second, of
     * which the sounds on both sides cover a part.
     */
    private static final int GAP = 10 - 2 * NearbyNoise.AROUND;

    /** Frames by which a recogniser may report the beginning of a word too early or its end too late. */
    private static final int INWARD = 20;

    /** Frames kept on both sides of the voice, so that no soft beginning is cut off; its first sound covers a part of them. */
    private static final int MARGIN = 5 - NearbyNoise.AROUND;

    /** How far below its loud frames a voice may fall and still count as voice, in dB. */
    private static final int SPEECH_DB = 18;

    /** Noise is at least so far below the loud frames around it, in dB: what is louder is more voice. */
    private static final int LEAST_CONTRAST = 10;

    /** Where loud frames are hardly louder than soft ones, in dB, no voice stands out from the room. */
    private static final int STEADY = 3;

    /** Where loud frames are so little louder than soft ones, in dB, the room is noisy or echoes. */
    private static final int NOISY = 32;

    /**
     * How far outside its first and last word a reading is looked for in such a room, in frames: what is louder than the room there may
     * be other people's talk, or the room's echo.
     */
    private static final int REACH = 15;

    /** Frames of silence that are a pause (250 ms, as in Goldman-Eisler 1968). */
    private static final int PAUSE = FrameLevels.PER_SECOND / 4;

    private final StreamTime start;
    private final int[] counts = new int[LEVELS];
    private byte[] frames = new byte[WINDOW];
    private int length;
    private int quiet;

    /** Creates the loudness of a take whose audio begins at {@code start}. */
    public Loudness(StreamTime start) {
        this.start = start;
    }

    /** Takes in frames; a gap before them counts as silence. */
    public void add(FrameLevels levels) {
        int from = index(levels.start());
        while (length < from) {
            add(FrameLevels.SILENCE);
        }
        for (byte level : levels.decibels()) {
            add(level);
        }
    }

    private void add(byte level) {
        if (length == frames.length) {
            frames = Arrays.copyOf(frames, 2 * length);
        }
        frames[length++] = level;
        counts[-level]++;
        if (length > WINDOW) {
            counts[-frames[length - 1 - WINDOW]]--;
        }
        quiet = level < threshold() ? quiet + 1 : 0;
    }

    /** Whether no sound has been measured yet. */
    public boolean unknown() {
        return length == 0;
    }

    /** The level of each frame from the take's start on, in dBFS. */
    public byte[] levels() {
        return Arrays.copyOf(frames, length);
    }

    /** How long only the room has been heard, up to now. */
    public StreamTime quiet() {
        return StreamTime.ofSamples(quiet, FrameLevels.PER_SECOND);
    }

    /** How much of the take's audio was measured. */
    public StreamTime heardTo() {
        return time(length);
    }

    private int threshold() {
        return threshold(counts, Math.min(length, WINDOW));
    }

    private static int threshold(int[] counts, int total) {
        int room = percentile(counts, ROOM_SHARE, total);
        int voice = percentile(counts, VOICE_SHARE, total);
        return room + Math.max(LEAST_DB, (int) Math.round(PART * (voice - room)));
    }

    private static int percentile(int[] counts, double share, int total) {
        int left = (int) (share * total);
        for (int level = LEVELS - 1; level > 0; level--) {
            left -= counts[level];
            if (left < 0) {
                return -level;
            }
        }
        return 0;
    }

    /**
     * The stretch of voice around some words: from the last silence before the first word to the first silence after
     * the last word, as far as the sound is known.
     *
     * @param first when the first word begins
     * @param last when the last word ends
     * @param after voice up to this time belongs to earlier speech
     * @param before voice from this time on belongs to later speech
     */
    public Stretch around(StreamTime first, StreamTime last, StreamTime after, StreamTime before) {
        return around(new Words(first, last, false, false), after, before);
    }

    /**
     * Words that were heard.
     *
     * @param first when the first one begins
     * @param last when the last one ends
     * @param begins whether they begin with the first word that was said
     * @param ends whether they end with the last one
     */
    public record Words(StreamTime first, StreamTime last, boolean begins, boolean ends) {}

    /** The same for words of which it is known whether others may come before or after them. */
    public Stretch around(Words words, StreamTime after, StreamTime before) {
        StreamTime first = words.first();
        StreamTime last = words.last();
        int from = index(first);
        int to = Math.min(index(last), length) - 1;
        if (to <= from) {
            return new Stretch(first, last);
        }
        int begins = Math.max(0, from - WINDOW / 2);
        int ends = Math.min(length, to + WINDOW / 2);
        int[] around = counts(begins, ends);
        int loud = percentile(around, VOICE_SHARE, ends - begins);
        int contrast = loud - percentile(around, ROOM_SHARE, ends - begins);
        if (contrast < STEADY) {
            return new Stretch(first, last);
        }
        boolean noisy = contrast < NOISY;
        int most = loud - LEAST_CONTRAST;
        NearbyNoise noiseBefore = NearbyNoise.beside(from, -1, frames, length, most);
        NearbyNoise noiseAfter = NearbyNoise.beside(to, 1, frames, length, most);
        int earliest = Math.max(index(after), noisy && words.begins() ? from - REACH : 0);
        int latest = Math.min(Math.min(index(before), length) - 1, noisy && words.ends() ? to + REACH : length);
        int begin = edge(from, -1, to, Math.max(earliest, 0), noiseBefore);
        int end = edge(to, 1, from, latest, noiseAfter);
        return begin < end ? new Stretch(time(begin), time(end + 1)) : new Stretch(first, last);
    }

    /** The level that a tenth of the frames between two times exceed, in dBFS; none if nothing is known of them. */
    public OptionalInt loud(StreamTime from, StreamTime to) {
        int first = index(from);
        int last = Math.min(index(to), length);
        return first < last
                ? OptionalInt.of(percentile(counts(first, last), VOICE_SHARE, last - first))
                : OptionalInt.empty();
    }

    /** A stretch of a take. */
    public record Stretch(StreamTime start, StreamTime end) {}

    /** How much voice there has been since {@code time}. */
    public StreamTime voiceAfter(StreamTime time) {
        int from = index(time);
        int threshold = voiceLevel(length - 1);
        int voiced = 0;
        for (int i = Math.max(from, length - WINDOW); i < length; i++) {
            voiced += frames[i] >= threshold ? 1 : 0;
        }
        return StreamTime.ofSamples(voiced, FrameLevels.PER_SECOND);
    }

    /** The time at which the voice next pauses after {@code time}, at most {@code limit}. */
    public StreamTime voiceUntil(StreamTime time, StreamTime limit) {
        int from = index(time);
        int last = Math.min(index(limit), length) - 1;
        return from > last ? time : StreamTime.max(time, time(lastVoice(from, 1, last) + 1));
    }

    /** The time since which the voice has gone on without a pause before {@code time}, at least {@code limit}. */
    public StreamTime voiceSince(StreamTime time, StreamTime limit) {
        int from = Math.min(index(time), length) - 1;
        int first = index(limit);
        return from < first ? time : StreamTime.min(time, time(lastVoice(from, -1, first)));
    }

    private int lastVoice(int from, int direction, int limit) {
        int threshold = voiceLevel(from);
        int last = from;
        int silent = 0;
        for (int i = from; (limit - i) * direction >= 0 && silent < PAUSE; i += direction) {
            boolean loud = frames[i] >= threshold;
            silent = loud ? 0 : silent + 1;
            last = loud ? i : last;
        }
        return last;
    }

    /** The level at or above which frames around {@code frame} are voice. */
    private int voiceLevel(int frame) {
        int first = Math.max(0, frame - WINDOW / 2);
        int last = Math.min(length, frame + WINDOW / 2);
        int[] around = counts(first, last);
        int room = percentile(around, ROOM_SHARE, last - first);
        return Math.max(room + LEAST_DB, percentile(around, VOICE_SHARE, last - first) - SPEECH_DB);
    }

    private int[] counts(int first, int last) {
        int[] around = new int[LEVELS];
        for (int i = first; i < last; i++) {
            around[-frames[i]]++;
        }
        return around;
    }

    /**
     * The outermost frame of voice, searching outwards from {@code word} to {@code limit}, plus a small margin. Gaps as
     * short as a stop consonant's do not count as silence. If the frame {@code word} is itself silent, the word's sound
     * lies further in, but not beyond the frame {@code other} at the other end of the speech.
     */
    private static int edge(int word, int direction, int other, int limit, NearbyNoise noise) {
        int edge = word;
        int inward = 0;
        while (noise.drowns(edge) && edge != other && inward++ < INWARD) {
            edge -= direction;
        }
        if (noise.drowns(edge)) {
            return word;
        }
        int silent = 0;
        for (int i = edge; (limit - i) * direction >= 0 && silent <= GAP; i += direction) {
            silent = noise.drowns(i) ? silent + 1 : 0;
            edge = silent == 0 ? i : edge;
        }
        int margin = Math.min(MARGIN, Math.max(0, (limit - edge) * direction));
        return edge + direction * margin;
    }

    private int index(StreamTime time) {
        return (int) time.since(start).samples(FrameLevels.PER_SECOND);
    }

    private StreamTime time(int index) {
        return start.plus(StreamTime.ofSamples(index, FrameLevels.PER_SECOND));
    }
}
