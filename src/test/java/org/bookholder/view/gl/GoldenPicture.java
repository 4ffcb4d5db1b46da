package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Pictures that are kept, a quarter as wide and high as they were drawn at 1920 by 1080, and compared by their blocks: glyphs
 * are the same everywhere, but renderers round and blend a little differently. {@code -Dgolden.update=true} renews them.
 */
final class GoldenPicture {
    /** What a block may differ by, of 255, on average over its pixels in its worst channel. */
    static final double TOLERANCE = 5;

    private static final Path FOLDER = Path.of("src/test/resources/golden/window");
    private static final int WIDTH = 480;
    private static final int HEIGHT = 270;
    private static final int BLOCK = 15;

    private GoldenPicture() {}

    /** Compares a picture, at any whole multiple of the kept size, with the one of that name. */
    static void check(String name, Snapshot picture) throws IOException {
        int[] scaled = scaled(picture);
        if (Boolean.getBoolean("golden.update")) {
            Files.createDirectories(FOLDER);
            BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
            image.setRGB(0, 0, WIDTH, HEIGHT, scaled, 0, WIDTH);
            ImageIO.write(image, "png", FOLDER.resolve(name + ".png").toFile());
        }
        assertThat(worstBlock(scaled, kept(name)))
                .as("picture " + name + "; run with -Dgolden.update=true if the change is meant, and look at it")
                .isLessThan(TOLERANCE);
    }

    /** By how much the block that differs most differs from the kept picture of that name. */
    static double difference(String name, Snapshot picture) throws IOException {
        return worstBlock(scaled(picture), kept(name));
    }

    private static int[] kept(String name) throws IOException {
        BufferedImage image = ImageIO.read(FOLDER.resolve(name + ".png").toFile());
        return image.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH);
    }

    private static int[] scaled(Snapshot picture) {
        int factor = picture.width() / WIDTH;
        assertThat(picture.width()).isEqualTo(factor * WIDTH);
        assertThat(picture.height()).isEqualTo(factor * HEIGHT);
        int[] scaled = new int[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                scaled[y * WIDTH + x] = average(picture, x * factor, y * factor, factor);
            }
        }
        return scaled;
    }

    private static int average(Snapshot picture, int left, int top, int size) {
        int[] sum = new int[3];
        for (int y = top; y < top + size; y++) {
            for (int x = left; x < left + size; x++) {
                for (int c = 0; c < 3; c++) {
                    sum[c] += (picture.at(x, y) >> (8 * c)) & 255;
                }
            }
        }
        int area = size * size;
        return (sum[2] / area) << 16 | (sum[1] / area) << 8 | sum[0] / area;
    }

    private static double worstBlock(int[] picture, int[] kept) {
        double worst = 0;
        for (int top = 0; top < HEIGHT; top += BLOCK) {
            for (int left = 0; left < WIDTH; left += BLOCK) {
                for (int shift = 0; shift <= 16; shift += 8) {
                    worst = Math.max(worst, difference(picture, kept, left, top, shift));
                }
            }
        }
        return worst;
    }

    private static double difference(int[] picture, int[] kept, int left, int top, int shift) {
        double sum = 0;
        for (int y = top; y < top + BLOCK; y++) {
            for (int x = left; x < left + BLOCK; x++) {
                int at = y * WIDTH + x;
                sum += Math.abs((picture[at] >> shift & 255) - (kept[at] >> shift & 255));
            }
        }
        return sum / (BLOCK * BLOCK);
    }
}
