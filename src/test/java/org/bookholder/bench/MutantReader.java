package org.bookholder.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import org.bookholder.course.CourseReader;
import org.bookholder.footage.Film;
import org.bookholder.footage.ffmpeg.FilmReader;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.timing.StreamTime;

/** Reads the files that {@link Mutations} names at its input, one a line, in a process that may be aborted by one. */
final class MutantReader {
    private static final Film.Viewer NOBODY = new Film.Viewer() {
        @Override
        public void picture(StreamTime at, byte[] luma, byte[] colours) {}

        @Override
        public void sound(StreamTime at, float[][] channels) {}
    };

    private MutantReader() {}

    public static void main(String[] args) throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String name = in.readLine(); name != null; name = in.readLine()) {
            long from = System.nanoTime();
            String result = result(Path.of(name));
            System.out.println(result + " " + (System.nanoTime() - from) / 1_000_000);
        }
    }

    private static String result(Path file) {
        try {
            read(file);
            return "read";
        } catch (ProblemException e) {
            return e.getMessage().lines().count() == 1 ? "answered" : "fault";
        } catch (Throwable e) {
            e.printStackTrace();
            return "fault";
        }
    }

    private static void read(Path file) throws ProblemException {
        String name = file.toString();
        if (name.endsWith(".wav")) {
            try (WavSource source = WavSource.open(file)) {
                AudioRead read = source.read();
                while (!(read instanceof AudioRead.Ended) && !(read instanceof AudioRead.Gone)) {
                    read = source.read();
                }
            }
        } else if (name.endsWith(".mp4") || name.endsWith(".mkv")) {
            try (FilmReader film = FilmReader.open(file)) {
                while (film.read(NOBODY)) {
                    // Read until its input ends.
                }
            }
        } else if (name.endsWith(".yaml")) {
            CourseReader.read(Objects.requireNonNull(file.getParent()));
        } else {
            ScriptReader.read(file);
        }
    }
}
