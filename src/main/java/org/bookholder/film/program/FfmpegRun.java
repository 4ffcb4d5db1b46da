package org.bookholder.film.program;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.footage.ffmpeg.FfmpegProgram;
import org.bookholder.problem.ProblemException;

/**
 * FFmpeg's program doing one piece of work. It is asked now and then how far it is and never waited for, so that several can
 * run at once and each can be ended at any time. Confined to one thread.
 */
public final class FfmpegRun implements AutoCloseable {
    private static final String FRAME = "frame=";

    /** The last bytes of what it says when it fails: enough for some lines. */
    private static final int TAIL = 4000;

    private final Process process;
    private final Path log;
    private final String what;
    private final StringBuilder line = new StringBuilder();
    private long frames;

    private FfmpegRun(Process process, Path log, String what) {
        this.process = process;
        this.log = log;
        this.what = what;
    }

    /**
     * Starts it.
     *
     * @param what what it makes, for messages: "the picture of lines 3 to 5"
     * @param arguments all but those that say how it reports
     * @param folder the folder in which it works: relative names among the arguments lie there, and what it says
     * @param log name of the file there for what it says
     * @throws ProblemException if it cannot be started
     */
    public static FfmpegRun start(String what, List<String> arguments, Path folder, String log)
            throws ProblemException {
        Path program = FfmpegProgram.path();
        List<String> command = new ArrayList<>(List.of(
                program.toString(),
                "-hide_banner",
                "-nostdin",
                "-nostats",
                "-loglevel",
                "error",
                "-progress",
                "pipe:1",
                "-stats_period",
                "0.5",
                "-n"));
        command.addAll(arguments);
        Path said = folder.resolve(log);
        try {
            ProcessBuilder builder =
                    new ProcessBuilder(command).directory(folder.toFile()).redirectError(said.toFile());
            builder.environment().putAll(FfmpegProgram.environment(program));
            Process process = builder.start();
            process.getOutputStream().close();
            return new FfmpegRun(process, said, what);
        } catch (IOException e) {
            throw new ProblemException(
                    "FFmpeg cannot be started (" + e.getMessage() + ")", what, "free some memory and try again", e);
        }
    }

    /** Whether it is still at work; takes in what it has reported. */
    public boolean runs() {
        boolean alive = process.isAlive();
        try {
            InputStream out = process.getInputStream();
            while (out.available() > 0) {
                take((char) out.read());
            }
        } catch (IOException e) {
            // Its reports are for the progress only; its exit status tells whether it worked.
            return alive;
        }
        return alive;
    }

    private void take(char next) {
        if (next != '\n') {
            line.append(next);
            return;
        }
        String said = line.toString();
        line.setLength(0);
        if (said.startsWith(FRAME)) {
            String number = said.substring(FRAME.length()).strip();
            frames = number.matches("\\d{1,12}") ? Long.parseLong(number) : frames;
        }
    }

    /** How many pictures it has made. */
    public long frames() {
        return frames;
    }

    /**
     * Checks that it worked; call it when it {@link #runs()} no more.
     *
     * @throws ProblemException if it did not
     */
    public void check() throws ProblemException {
        if (process.exitValue() == 0) {
            return;
        }
        String said = said();
        String lower = said.toLowerCase(Locale.ROOT);
        if (lower.contains("no space left") || lower.contains("not enough space") || lower.contains("quota")) {
            throw new ProblemException(
                    "the disk is full",
                    String.valueOf(log.getParent()),
                    "free some space, or choose a folder on another disk");
        }
        throw new ProblemException(
                "FFmpeg could not make it (" + (said.isEmpty() ? "status " + process.exitValue() : said) + ")",
                what,
                "play the camera's file there to see whether it is whole");
    }

    /** The last line that it said; empty if none. */
    private String said() {
        try {
            byte[] all = Files.readAllBytes(log);
            int from = Math.max(0, all.length - TAIL);
            String[] lines = new String(all, from, all.length - from, StandardCharsets.UTF_8)
                    .strip()
                    .split("\\R");
            return String.join(" / ", List.of(lines).subList(Math.max(0, lines.length - 2), lines.length));
        } catch (IOException e) {
            return "";
        }
    }

    /** Ends it if it still runs. */
    @Override
    public void close() {
        process.destroyForcibly();
    }
}
