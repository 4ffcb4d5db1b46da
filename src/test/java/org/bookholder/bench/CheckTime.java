package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.bookholder.testing.Folders;

/**
 * Measures how long the check of an exported film takes beside watching it: ten minutes of 1080p at 25 pictures a second and 8
 * Mb/s, in which the demo's lesson is read over and over and its words are followed. Needs FFmpeg and some 700 MB below the
 * temporary folder.
 */
public final class CheckTime {
    private static final int SECONDS = 600;
    private static final int ROUNDS = 7;

    private CheckTime() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path demo = Path.of(System.getProperty("bookholder.home", "")).resolve("demo-scripts");
        Path folder = Files.createTempDirectory("bookholder-check");
        try {
            Path film = film(folder, demo.resolve("lesson-1.wav"));
            Path script = Files.writeString(folder.resolve("lesson.md"), script(demo.resolve("lesson-1.md")));
            Path out = folder.resolve("out.txt");
            Commands.Run run = Commands.run(out, "check", film.toString(), "--script", script.toString());
            System.out.printf(
                    Locale.ROOT,
                    "%d s of film, %.0f MB: checked in %.0f s (%.2f of watching it), exit status %d%n",
                    SECONDS,
                    Files.size(film) / 1e6,
                    run.seconds(),
                    run.seconds() / SECONDS,
                    run.status());
            try (Stream<String> lines = Files.lines(out)) {
                lines.limit(4).forEach(System.out::println);
            }
        } finally {
            Folders.delete(folder);
        }
    }

    /** A minute and a half is encoded and then repeated: to the check it is as much work as ten minutes that are all different. */
    private static Path film(Path folder, Path voice) {
        Path once = folder.resolve("once.mp4");
        Path film = folder.resolve("lesson.mp4");
        Decoder.output(
                "ffmpeg",
                "-v",
                "error",
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=1920x1080:rate=25,noise=alls=10:allf=t",
                "-i",
                voice.toString(),
                "-shortest",
                "-pix_fmt",
                "yuv420p",
                "-c:v",
                "libx264",
                "-preset",
                "veryfast",
                "-b:v",
                "8M",
                "-c:a",
                "aac",
                "-ar",
                "48000",
                once.toString());
        Decoder.output(
                "ffmpeg",
                "-v",
                "error",
                "-stream_loop",
                Integer.toString(ROUNDS),
                "-i",
                once.toString(),
                "-t",
                Integer.toString(SECONDS),
                "-c",
                "copy",
                film.toString());
        return film;
    }

    /** The lesson repeated as often as it is read, under one heading. */
    private static String script(Path lesson) throws IOException {
        List<String> lines = Files.readAllLines(lesson);
        int head = lines.subList(1, lines.size()).indexOf("---") + 2;
        StringBuilder text = new StringBuilder(String.join("\n", lines.subList(0, head)) + "\n");
        for (int i = 0; i < ROUNDS; i++) {
            text.append(String.join("\n", lines.subList(head, lines.size()))).append("\n\n");
        }
        return text.toString();
    }
}
