package org.bookholder.film.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.NumberedCamera;
import org.bookholder.film.format.Encoding;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.SoundEncoding;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.session.FilmChoices;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Pictures of files as cameras write them, each picture with its number, or in a colour that is known. */
@Execution(ExecutionMode.CONCURRENT)
final class FilmPicturesTest {
    private static final int COUNT = 150;

    private static final String[] H264 = {"-c:v", "libx264", "-preset", "ultrafast", "-g", "60", "-bf", "2"};

    @TempDir
    private Path folder;

    private Path work;

    @BeforeEach
    void font() throws IOException {
        work = Files.createDirectory(folder.resolve("work"));
        try (InputStream font =
                FilmPicturesTest.class.getResourceAsStream("/com/formdev/flatlaf/fonts/inter/Inter-Regular.otf")) {
            Files.write(work.resolve("font.otf"), font.readAllBytes());
        }
    }

    @Test
    void picturesAt2997AreNotOneOff() throws ProblemException {
        Path film = numbered("a.mov", "30000/1001", H264);
        assertThat(PictureFile.look(film).delay()).isZero();
        assertThat(numbers(film, FrameRate.FPS_29_97, true, 97, 40)).isEqualTo(range(97, 40));
    }

    @Test
    void anMtsThatBeginsLateIsReadFromItsFirstPictureOn() throws ProblemException {
        Path film = numbered(
                "a.MTS", "25", "-c:v", "libx264", "-preset", "ultrafast", "-g", "60", "-bf", "2", "-f", "mpegts");
        assertThat(numbers(film, FrameRate.FPS_25, true, 70, 40)).isEqualTo(range(70, 40));
        assertThat(numbers(film, FrameRate.FPS_25, true, 300, 40)).isEqualTo(range(300, 40));
    }

    @Test
    void ofPicturesThatComeUnevenlyTheOneOnShowIsTaken() throws ProblemException {
        // Of fifty a second some are left out; each carries its number of fifty.
        Path film = numbered(
                "a.mp4",
                "50",
                "-vf",
                "select='lt(mod(n*n*7+n*3,5),3)'",
                "-vsync",
                "vfr",
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-g",
                "60",
                "-bf",
                "2");
        Footage.Picture picture = FootageFile.look(film).picture().orElseThrow();
        assertThat(picture.variable()).isTrue();
        List<Integer> planned = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            int shown = (int) Math.floor((20 + i) * 2 + 0.1);
            while ((shown * shown * 7 + shown * 3) % 5 >= 3) {
                shown--;
            }
            planned.add(shown);
        }
        assertThat(numbers(film, FrameRate.FPS_25, false, 20, 40)).isEqualTo(planned);
    }

    @Test
    void atAnotherRateThanTheCamerasThePictureOnShowIsTaken() throws ProblemException {
        Path film = numbered("a.mp4", "50", H264);
        List<Integer> planned = LongStream.range(0, 40)
                .mapToObj(i -> (int) Math.floor((20 + i) * 1001 / 30_000.0 * 50 + 0.1))
                .toList();
        assertThat(numbers(film, FrameRate.FPS_29_97, false, 20, 40)).isEqualTo(planned);
    }

    @Test
    void aTurnedPictureIsUprightInTheFilm() throws ProblemException {
        Path turned = numbered("turned.mp4", "25", "-vf", "transpose=1", "-c:v", "libx264", "-preset", "ultrafast");
        Path film = Ffmpeg.make(
                folder.resolve("a.mp4"), "-i", turned.toString(), "-c", "copy", "-metadata:s:v:0", "rotate=90");
        // Another program that heeds the flag shows it upright.
        assertThat(FilmReadBack.silent(film, folder).numbers(30, 50, 1)).isEqualTo(range(30, 20));
        PictureFacts facts = PictureFile.look(film);
        assertThat(facts.width()).isEqualTo(320);
        assertThat(facts.height()).isEqualTo(180);
        assertThat(numbers(film, FrameRate.FPS_25, true, 30, 20)).isEqualTo(range(30, 20));
    }

    @Test
    void pixelsThatAreNotSquareAreBroughtToTheirShape() throws ProblemException {
        // As old video is stored: 1.42 times as wide as its pixels are counted.
        Path film =
                numbered("a.mp4", "25", "-vf", "scale=224:180,setsar=10/7", "-c:v", "libx264", "-preset", "ultrafast");
        assertThat(PictureFile.look(film).width()).isEqualTo(320);
        assertThat(numbers(film, FrameRate.FPS_25, true, 30, 20)).isEqualTo(range(30, 20));
    }

    @Test
    void theCloserFramingStaysAroundTheEyes() throws ProblemException {
        Path film = numbered("a.mp4", "25", H264);
        Path made = made(film, FrameRate.FPS_25, true, 30, 20, 112);
        assertThat(FilmReadBack.silent(made, folder).numbers(0, 20, 1.12)).isEqualTo(range(30, 20));
    }

    @Test
    void anInterlacedPictureBecomesAWholeOne() throws ProblemException {
        Path film = Ffmpeg.make(
                folder.resolve("a.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=s=320x180:r=50,interlace",
                "-t",
                "4",
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-flags",
                "+ildct+ilme",
                "-x264opts",
                "tff=1");
        assertThat(PictureFile.look(film).interlaced()).isTrue();
        Path made = made(film, FrameRate.FPS_25, true, 30, 20, 100);
        String found = Ffmpeg.says(made, "-vf", "idet");
        assertThat(found).containsPattern("Multi frame detection: TFF:\\s+0 BFF:\\s+0 Progressive:\\s+20");
    }

    @Test
    void fullRangeIsBroughtToLimitedRangeWithoutAChangeOfBrightness() throws ProblemException {
        String gray = "color=c=0x404040:s=320x180:r=25";
        assertColour(64, 64, 64, gray, "scale=out_range=full,format=yuvj420p", "-color_range", "pc");
        assertColour(64, 64, 64, gray, "scale=out_range=limited,format=yuv420p", "-color_range", "tv");
    }

    @Test
    void coloursOfStandardDefinitionStayTheSame() throws ProblemException {
        String red = "color=c=0xc03020:s=320x180:r=25";
        assertColour(192, 48, 32, red, "scale=out_color_matrix=bt601,format=yuv420p", "-colorspace", "smpte170m");
        assertColour(192, 48, 32, red, "scale=out_color_matrix=bt709,format=yuv420p", "-colorspace", "bt709");
        // A small picture that says nothing is taken for standard definition.
        assertColour(192, 48, 32, red, "scale=out_color_matrix=bt601,format=yuv420p");
    }

    @Test
    void wideRangeOfBrightnessIsBroughtDown() throws ProblemException {
        for (String transfer : List.of("arib-std-b67", "smpte2084")) {
            Path film = Ffmpeg.make(
                    folder.resolve(transfer + ".mp4"),
                    "-f",
                    "lavfi",
                    "-i",
                    "color=c=0x808080:s=320x180:r=25,scale=out_color_matrix=bt2020:out_range=limited,format=yuv420p10le",
                    "-t",
                    "3",
                    "-c:v",
                    "libx264",
                    "-preset",
                    "ultrafast",
                    "-colorspace",
                    "bt2020nc",
                    "-color_primaries",
                    "bt2020",
                    "-color_trc",
                    transfer);
            assertThat(PictureFile.look(film).light()).isNotEqualTo(PictureFacts.Light.STANDARD);
            int[] colour = colour(made(film, FrameRate.FPS_25, true, 10, 10, 100));
            // Gray stays gray, neither black nor white.
            assertThat(colour[0]).isBetween(60, 230);
            assertThat(colour[1]).isCloseTo(colour[0], within(6));
            assertThat(colour[2]).isCloseTo(colour[0], within(6));
        }
    }

    private void assertColour(int red, int green, int blue, String source, String filter, String... arguments)
            throws ProblemException {
        Path film = folder.resolve("colour.mp4");
        List<String> all = new ArrayList<>(List.of("-f", "lavfi", "-i", source, "-t", "3", "-vf", filter));
        all.addAll(List.of("-c:v", "libx264", "-preset", "ultrafast", "-qp", "10"));
        all.addAll(List.of(arguments));
        Ffmpeg.make(film, all.toArray(String[]::new));
        int[] colour = colour(made(film, FrameRate.FPS_25, true, 10, 10, 100));
        assertThat(colour[0]).as(filter).isCloseTo(red, within(4));
        assertThat(colour[1]).as(filter).isCloseTo(green, within(4));
        assertThat(colour[2]).as(filter).isCloseTo(blue, within(4));
    }

    /** The colour in the middle of a film's first picture, which says of itself that it is by BT.709. */
    private int[] colour(Path film) {
        Path raw = folder.resolve("colour.rgb");
        Ffmpeg.make(raw, "-i", film.toString(), "-frames:v", "1", "-vf", "format=rgb24", "-f", "rawvideo");
        try {
            byte[] bytes = Files.readAllBytes(raw);
            int at = (90 * 320 + 160) * 3;
            return new int[] {bytes[at] & 0xff, bytes[at + 1] & 0xff, bytes[at + 2] & 0xff};
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Integer> range(int from, int count) {
        return LongStream.range(from, from + count).mapToObj(n -> (int) n).toList();
    }

    /** A dot at three quarters of the width and a quarter of the height. */
    @Test
    void thePointThatSomeoneChoseStaysInPlace() throws ProblemException {
        Path film = Ffmpeg.make(
                folder.resolve("dot.mp4"),
                "-f",
                "lavfi",
                "-i",
                "color=black:s=640x360:r=25",
                "-t",
                "1",
                "-vf",
                "drawbox=x=472:y=82:w=16:h=16:color=white:t=fill",
                "-pix_fmt",
                "yuv420p");
        Shot shot = new Shot(film, PictureFile.look(film), true, 0, 150);
        FilmChoices.Point dot = new FilmChoices.Point(750, 250);
        assertThat(brightest(made(shot.around(dot), FrameRate.FPS_25, 5)))
                .as("framed closer around the dot, in a film of 320 by 180")
                .isEqualTo(new FilmChoices.Point(240, 45));
        FilmChoices.Point eyes = brightest(made(shot, FrameRate.FPS_25, 5));
        assertThat(eyes.across()).as("framed closer around the eyes").isCloseTo(280, within(1));
        assertThat(eyes.down()).isCloseTo(38, within(1));
    }

    /** The middle of what is bright in the first picture, in pixels. */
    private FilmChoices.Point brightest(Path film) {
        Path gray = Ffmpeg.make(
                folder.resolve("gray"), "-i", film.toString(), "-frames:v", "1", "-pix_fmt", "gray", "-f", "rawvideo");
        try {
            byte[] pixels = Files.readAllBytes(gray);
            double count = 0;
            double across = 0;
            double down = 0;
            for (int i = 0; i < pixels.length; i++) {
                if ((pixels[i] & 0xff) > 127) {
                    count++;
                    across += i % 320 + 0.5;
                    int row = i / 320;
                    down += row + 0.5;
                }
            }
            return new FilmChoices.Point((int) Math.round(across / count), (int) Math.round(down / count));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Path numbered(String name, String rate, String... arguments) {
        int count = name.endsWith("MTS") ? 3 * COUNT : COUNT;
        return NumberedCamera.make(folder.resolve(name), count, rate, new short[0], arguments);
    }

    private List<Integer> numbers(Path film, FrameRate rate, boolean steady, long first, int count)
            throws ProblemException {
        FilmReadBack made = FilmReadBack.silent(made(film, rate, steady, first, count, 100), folder);
        assertThat(made.pictures()).isEqualTo(count);
        return made.numbers(0, count, 1);
    }

    private Path made(Path film, FrameRate rate, boolean steady, long first, int count, int scale)
            throws ProblemException {
        return made(new Shot(film, PictureFile.look(film), steady, first, scale), rate, count);
    }

    private Path made(Shot shot, FrameRate rate, int count) throws ProblemException {
        FilmClip clip = new FilmClip(1, 1, 0, 1, s(0), s(1), 0, count, Optional.of(shot), Optional.empty(), List.of());
        FilmFormat format = new FilmFormat(
                "mp4", Encoding.H264, "yuv420p", 320, 180, rate, 1500, SoundEncoding.AAC, 128, 48_000, 2, -16, -1);
        try {
            Path place = Files.createTempDirectory(work, "clip");
            Files.copy(work.resolve("font.otf"), place.resolve("font.otf"));
            ClipStore store = new ClipStore(place.resolve("kept"));
            FilmPlan plan = new FilmPlan(rate, List.of(clip));
            List<String> files;
            try (FilmPictures pictures =
                    new FilmPictures(plan, format, Scripts.of("A line."), false, "font.otf", store, place, 1)) {
                files = pictures.make(made -> {}, () -> new CompletionLatch().await(20));
            }
            return store.file(files.get(0));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
