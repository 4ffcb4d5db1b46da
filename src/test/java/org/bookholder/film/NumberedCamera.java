package org.bookholder.film;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Wav;

/**
 * A camera whose every picture carries its number, as sixteen bright or dark fields in a row a third from the top, and whose
 * sound is known to the sample. The rest of the picture is noise, so that a film of it takes bits as a film of a person does.
 */
public final class NumberedCamera {
    /** Width of its pictures. */
    public static final int WIDTH = 320;

    /** Height of its pictures. */
    public static final int HEIGHT = 180;

    static final int BITS = 16;
    static final double LEFT = 0.1;
    static final double FIELD = 0.8 / BITS;
    static final double ROW = 1 / 3.0;

    private static final int DARK = 40;
    private static final int BRIGHT = 215;

    private NumberedCamera() {}

    /**
     * Makes one.
     *
     * @param count how many pictures
     * @param rate pictures a second, as FFmpeg reads it: {@code 25}, {@code 30000/1001}
     * @param sound its sound, 48,000 samples a second; empty for none
     * @param arguments how FFmpeg stores it, and filters
     */
    public static Path make(Path film, int count, String rate, short[] sound, String... arguments) {
        Path pictures = film.resolveSibling(film.getFileName() + ".gray");
        try {
            write(pictures, count);
            List<String> all = new ArrayList<>(List.of("-f", "rawvideo", "-pix_fmt", "gray", "-s"));
            all.addAll(List.of(WIDTH + "x" + HEIGHT, "-r", rate, "-i", pictures.toString()));
            if (sound.length > 0) {
                Path voice = Wav.write(film.resolveSibling(film.getFileName() + ".wav"), 48_000, sound);
                all.addAll(List.of("-i", voice.toString(), "-map", "0:v", "-map", "1:a"));
            }
            all.addAll(List.of("-pix_fmt", "yuv420p"));
            all.addAll(List.of(arguments));
            Ffmpeg.make(film, all.toArray(String[]::new));
            Files.delete(pictures);
            return film;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void write(Path file, int count) throws IOException {
        Random random = new Random(1);
        byte[] noise = new byte[WIDTH * HEIGHT];
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            for (int number = 0; number < count; number++) {
                for (int i = 0; i < noise.length; i++) {
                    noise[i] = (byte) (112 + random.nextInt(16));
                }
                for (int y = (int) (HEIGHT * (ROW - 0.06)); y < HEIGHT * (ROW + 0.06); y++) {
                    for (int x = (int) (WIDTH * LEFT); x < WIDTH * (LEFT + BITS * FIELD); x++) {
                        int bit = (int) ((x + 0.5 - WIDTH * LEFT) / (WIDTH * FIELD));
                        noise[y * WIDTH + x] = (byte) ((number >> bit & 1) == 1 ? BRIGHT : DARK);
                    }
                }
                out.write(noise);
            }
        }
    }
}
