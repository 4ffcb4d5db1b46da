package org.bookholder.film;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.testing.Ffmpeg;

/**
 * What is in a film of a {@link NumberedCamera}, as another program decodes it: the number that each picture carries, and the
 * sound.
 */
public final class FilmReadBack {
    private final byte[] pictures;
    private final short[] sound;
    private final String loudness;

    private FilmReadBack(byte[] pictures, short[] sound, String loudness) {
        this.pictures = pictures;
        this.sound = sound;
        this.loudness = loudness;
    }

    /** Reads a film; its pictures one for one as they are stored. */
    public static FilmReadBack of(Path film, Path folder) {
        Path voice = folder.resolve("read-back.s16");
        Ffmpeg.make(voice, "-i", film.toString(), "-map", "0:a", "-ac", "1", "-ar", "48000", "-f", "s16le");
        ByteBuffer bytes = ByteBuffer.wrap(bytes(voice)).order(ByteOrder.LITTLE_ENDIAN);
        short[] samples = new short[bytes.remaining() / 2];
        bytes.asShortBuffer().get(samples);
        return new FilmReadBack(pictures(film, folder), samples, Ffmpeg.says(film, "-af", "ebur128=peak=true"));
    }

    /** Reads a film without sound. */
    public static FilmReadBack silent(Path film, Path folder) {
        return new FilmReadBack(pictures(film, folder), new short[0], "");
    }

    private static byte[] pictures(Path film, Path folder) {
        Path gray = folder.resolve("read-back.gray");
        String size = "scale=" + NumberedCamera.WIDTH + ":" + NumberedCamera.HEIGHT + ",format=gray";
        Ffmpeg.make(gray, "-i", film.toString(), "-map", "0:v", "-vf", size, "-vsync", "passthrough", "-f", "rawvideo");
        return bytes(gray);
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** How many pictures it has. */
    public int pictures() {
        return pictures.length / (NumberedCamera.WIDTH * NumberedCamera.HEIGHT);
    }

    /** The numbers that some of its pictures carry, framed so much closer than they were shot. */
    public List<Integer> numbers(long from, long to, double scale) {
        List<Integer> numbers = new ArrayList<>();
        for (long picture = from; picture < to; picture++) {
            int number = 0;
            for (int bit = 0; bit < NumberedCamera.BITS; bit++) {
                double x = NumberedCamera.LEFT + (bit + 0.5) * NumberedCamera.FIELD;
                number |= bright((int) picture, 0.5 + (x - 0.5) * scale, NumberedCamera.ROW) ? 1 << bit : 0;
            }
            numbers.add(number);
        }
        return numbers;
    }

    private boolean bright(int picture, double x, double y) {
        int row = (int) (y * NumberedCamera.HEIGHT);
        int column = (int) (x * NumberedCamera.WIDTH);
        int at = (picture * NumberedCamera.HEIGHT + row) * NumberedCamera.WIDTH + column;
        return (pictures[at] & 0xff) > 127;
    }

    /** How many samples of sound it has. */
    public int samples() {
        return sound.length;
    }

    /**
     * By how many samples a stretch of its sound comes late, found by how well it agrees with what was recorded.
     *
     * @param at the stretch's first sample in the film
     * @param recorded the source, 48,000 samples a second
     * @param from the sample of the source that is to be heard there
     * @param count how many samples are compared
     */
    public int late(long at, short[] recorded, double from, int count) {
        int reach = 2000;
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int lag = -reach; lag <= reach; lag++) {
            double sum = 0;
            for (int i = 0; i < count; i += 2) {
                int mine = (int) at + i + lag;
                int theirs = (int) Math.rint(from) + i;
                sum += mine >= 0 && mine < sound.length && theirs >= 0 && theirs < recorded.length
                        ? (double) sound[mine] * recorded[theirs]
                        : 0;
            }
            if (sum > most) {
                most = sum;
                best = lag;
            }
        }
        return best;
    }

    /** Its loudness in LUFS, as FFmpeg's ebur128 measures it. */
    public double loudness() {
        return figure("I:\\s+(-?[0-9.]+) LUFS");
    }

    /** Its true peak in dBTP, likewise. */
    public double truePeak() {
        return figure("Peak:\\s+(-?[0-9.]+) dBFS");
    }

    private double figure(String form) {
        // Running figures come first, the summary last.
        Matcher found = Pattern.compile(form).matcher(loudness);
        double last = Double.NaN;
        while (found.find()) {
            last = Double.parseDouble(found.group(1));
        }
        return last;
    }
}
