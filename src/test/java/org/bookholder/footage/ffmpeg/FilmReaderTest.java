package org.bookholder.footage.ffmpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.footage.Film;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a film looks like that is read. */
final class FilmReaderTest {
    /** What 8 bits and their way to brightness, colour and back may change; a wrong matrix changes 13 of 255. */
    private static final int ROUNDED = 5;

    @TempDir
    private Path folder;

    /** FFmpeg's decoders give pictures of full range a form of their own. */
    @ParameterizedTest
    @CsvSource({"yuv420p, limited", "yuvj420p, full"})
    void eachPictureOfALastingColourHasThatColour(String form, String range) throws ProblemException {
        Path film = Ffmpeg.make(
                folder.resolve(range + ".mp4"),
                "-f",
                "lavfi",
                "-i",
                "color=0xC04020:s=1280x720:r=25:d=0.4",
                "-vf",
                "scale=out_color_matrix=bt709:out_range=" + range,
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-pix_fmt",
                form);
        Colours seen = new Colours();
        try (FilmReader reader = FilmReader.open(film)) {
            assertThat(reader.film().picture().orElseThrow().pixels()).isEqualTo(form);
            while (reader.read(seen)) {
                assertThat(reader.damaged()).isZero();
            }
        }
        assertThat(seen.middles).hasSize(10).allSatisfy(colour -> {
            assertThat(colour[0]).isCloseTo(0xC0, within(ROUNDED));
            assertThat(colour[1]).isCloseTo(0x40, within(ROUNDED));
            assertThat(colour[2]).isCloseTo(0x20, within(ROUNDED));
        });
    }

    /** Keeps the colour in the middle of each picture. */
    private static final class Colours implements Film.Viewer {
        private final List<int[]> middles = new ArrayList<>();

        @Override
        public void picture(StreamTime at, byte[] luma, byte[] colours) {
            int middle = (ROWS / 2 * COLUMNS + COLUMNS / 2) * 3;
            middles.add(new int[] {colours[middle] & 0xFF, colours[middle + 1] & 0xFF, colours[middle + 2] & 0xFF});
        }

        @Override
        public void sound(StreamTime at, float[][] channels) {}
    }
}
