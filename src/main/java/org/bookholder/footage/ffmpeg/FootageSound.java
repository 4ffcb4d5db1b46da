package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.footage.Channels;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;
import org.bytedeco.ffmpeg.avformat.AVStream;

/**
 * The sound of a file of footage: one channel of 16-bit samples at the rate that is asked for, or every channel, from the file's first
 * picture on, or if there is no picture, from its first sound in any stream. Cameras that store each microphone as a stream of its own
 * have as many channels.
 *
 * <p>What is missing at the beginning or in between is silence, so that a sample's number tells its time. A file that
 * breaks off in the middle ends there. Confined to one thread.
 */
public final class FootageSound implements AutoCloseable {
    private static final Optional<Channels> MIXED = Optional.of(Channels.ALL);
    private static final double[] NONE = {};

    private final List<StreamSound> streams;
    private final int rate;

    /** How much of each stream is heard; empty if they are kept beside each other, or the file has only one. */
    private final double[] weights;

    private final List<short[]> waiting = new ArrayList<>();
    private final boolean[] ended;

    private FootageSound(List<StreamSound> streams, int rate, double[] weights) {
        this.streams = streams;
        this.rate = rate;
        this.weights = weights;
        ended = new boolean[streams.size()];
        streams.forEach(stream -> waiting.add(new short[0]));
    }

    /** Opens a file's sound with all its channels mixed into one. */
    public static FootageSound open(Path path, int rate) throws ProblemException {
        return open(path, rate, Channels.ALL);
    }

    /**
     * Opens a file's sound as a voice is heard best in it: all its channels mixed into one, or the only one in which the voice is not
     * lost, or two that only together let it be heard. To find that out, up to its first three minutes are read before.
     *
     * @param rate samples a second that are wanted
     * @throws ProblemException if it has none, or none that FFmpeg can decode
     */
    public static FootageSound openVoice(Path path, int rate) throws ProblemException {
        return open(path, rate, VoiceChannel.of(path));
    }

    /**
     * Opens a file's sound.
     *
     * @param rate samples a second that are wanted
     * @param heard the channels that are wanted
     * @throws ProblemException if it has none, or none that FFmpeg can decode
     */
    public static FootageSound open(Path path, int rate, Channels heard) throws ProblemException {
        return open(path, rate, Optional.of(heard));
    }

    /**
     * Opens a file's sound with every channel for itself: what is read holds them beside each other, sample by sample.
     *
     * @param rate samples a second that are wanted
     * @throws ProblemException if it has none, or none that FFmpeg can decode
     */
    public static FootageSound openEach(Path path, int rate) throws ProblemException {
        return open(path, rate, Optional.empty());
    }

    private static FootageSound open(Path path, int rate, Optional<Channels> heard) throws ProblemException {
        OpenFile file = OpenFile.open(path);
        List<AVStream> sounds = file.sounds();
        if (sounds.isEmpty()) {
            file.close();
            throw noSound(path);
        }
        if (sounds.size() == 1) {
            return new FootageSound(List.of(StreamSound.open(file, sounds.get(0), rate, heard)), rate, NONE);
        }
        int count = sounds.size();
        file.close();
        double[] weights = heard.map(h -> h.weights(count)).orElse(NONE);
        int[] wanted = IntStream.range(0, count)
                .filter(i -> weights.length == 0 || weights[i] != 0)
                .toArray();
        List<StreamSound> streams = new ArrayList<>();
        try {
            // Of two that cancel each other one remains, as silence has a length, too.
            for (int stream : wanted.length == 0 ? new int[] {0} : wanted) {
                // Each is read by itself: in some files one lies far behind the other.
                OpenFile again = OpenFile.open(path);
                streams.add(StreamSound.open(again, again.sounds().get(stream), rate, MIXED));
            }
        } catch (ProblemException e) {
            streams.forEach(StreamSound::close);
            throw e;
        }
        return new FootageSound(streams, rate, ofThese(wanted, weights));
    }

    private static double[] ofThese(int[] wanted, double[] weights) {
        if (weights.length == 0) {
            return NONE;
        }
        return wanted.length == 0
                ? new double[] {0}
                : Arrays.stream(wanted).mapToDouble(i -> weights[i]).toArray();
    }

    private static ProblemException noSound(Path path) {
        return new ProblemException(
                "has no sound", path.toString(), "name a file with a sound track; it is matched by that");
    }

    /**
     * Opens only about the last second of a file's sound, without reading what comes before; all of it where that cannot be done.
     *
     * @throws ProblemException if it has none, or none that FFmpeg can decode
     */
    static FootageSound openEnd(Path path, int rate) throws ProblemException {
        OpenFile file = OpenFile.open(path);
        List<AVStream> sounds = file.sounds();
        if (sounds.isEmpty()) {
            file.close();
            throw noSound(path);
        }
        // One stream is enough: after the leap several would not lie beside each other.
        StreamSound stream = StreamSound.open(file, sounds.get(0), rate, MIXED);
        stream.toEnd();
        return new FootageSound(List.of(stream), rate, NONE);
    }

    /** When its first sample is due in the file's own time. */
    public StreamTime begins() {
        return streams.get(0).begins();
    }

    /** How many channels are read beside each other; known once something was read. */
    public int width() {
        if (weights.length > 0) {
            return 1;
        }
        return streams.size() == 1 ? streams.get(0).width() : streams.size();
    }

    /** Samples a second. */
    public int rate() {
        return rate;
    }

    /** The samples that come next, some thousands; empty at the end. */
    public Optional<short[]> read() throws ProblemException {
        if (streams.size() == 1 && weights.length == 0) {
            return streams.get(0).read();
        }
        int count = Integer.MAX_VALUE;
        int most = 0;
        for (int i = 0; i < ended.length; i++) {
            while (!ended[i] && waiting.get(i).length == 0) {
                Optional<short[]> more = streams.get(i).read();
                ended[i] = more.isEmpty();
                waiting.set(i, more.orElse(waiting.get(i)));
            }
            count = ended[i] ? count : Math.min(count, waiting.get(i).length);
            most = Math.max(most, waiting.get(i).length);
        }
        return most == 0 ? Optional.empty() : Optional.of(together(Math.min(count, most)));
    }

    /** The next samples of all streams; one that has ended is silent. */
    private short[] together(int count) {
        int width = width();
        short[] samples = new short[count * width];
        for (int k = 0; k < count; k++) {
            double sum = 0;
            for (int i = 0; i < waiting.size(); i++) {
                short sample = k < waiting.get(i).length ? waiting.get(i)[k] : 0;
                if (weights.length > 0) {
                    sum += weights[i] * sample;
                } else {
                    samples[k * width + i] = sample;
                }
            }
            if (weights.length > 0) {
                samples[k] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(sum)));
            }
        }
        waiting.replaceAll(left -> Arrays.copyOfRange(left, Math.min(count, left.length), left.length));
        return samples;
    }

    @Override
    public void close() {
        streams.forEach(StreamSound::close);
    }
}
