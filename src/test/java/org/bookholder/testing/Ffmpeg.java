package org.bookholder.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The command-line FFmpeg: makes films for tests, and is a second opinion on them. */
public final class Ffmpeg {
    private Ffmpeg() {}

    /** Makes a film; {@code arguments} are those between the program's name and the file's. */
    public static Path make(Path film, String... arguments) {
        List<String> all = new ArrayList<>(List.of("-y"));
        all.addAll(List.of(arguments));
        all.add(film.toString());
        run(all);
        return film;
    }

    /** What a filter says of a film's picture or sound. */
    public static String says(Path film, String option, String filter) {
        return run(List.of("-i", film.toString(), option, filter, "-f", "null", "-"));
    }

    private static String run(List<String> arguments) {
        Needs.program("ffmpeg", "Debian package ffmpeg");
        List<String> command = new ArrayList<>(List.of("ffmpeg", "-hide_banner", "-nostats", "-nostdin"));
        command.addAll(arguments);
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getOutputStream().close();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, process.waitFor(), said);
            return said;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
