package org.bookholder.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bytedeco.javacpp.Loader;

/** Decodes sound files to samples at {@link Sound#RATE}. */
final class Decoder {
    /** Two samples a byte: ITU-T G.722, 16 kHz at 64 kbit/s. */
    private static final int G722_SAMPLES_PER_BYTE = 2;

    private Decoder() {}

    /**
     * Files of the wideband codec ITU-T G.722 at 64 kbit/s, in one go by the decoder of the FFmpeg program. The decoder
     * goes from one file to the next without a break; its state from the last file has no effect after a few
     * milliseconds.
     */
    static List<short[]> g722(List<Path> files) {
        try {
            Path joined = Files.createTempFile("joined", ".g722");
            try {
                int[] lengths = new int[files.size()];
                try (OutputStream out = Files.newOutputStream(joined)) {
                    for (int i = 0; i < lengths.length; i++) {
                        lengths[i] = G722_SAMPLES_PER_BYTE * (int) Files.copy(files.get(i), out);
                    }
                }
                return split(samples(ffmpeg(joined)), lengths);
            } finally {
                Files.delete(joined);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] ffmpeg(Path g722) {
        return output(
                Loader.load(org.bytedeco.ffmpeg.ffmpeg.class),
                "-v",
                "error",
                "-f",
                "g722",
                "-i",
                g722.toString(),
                "-f",
                "s16le",
                "-ar",
                String.valueOf(Sound.RATE),
                "-");
    }

    private static List<short[]> split(short[] all, int[] lengths) {
        List<short[]> parts = new ArrayList<>();
        int at = 0;
        for (int length : lengths) {
            parts.add(Sound.part(all, at, at + length));
            at += length;
        }
        if (at != all.length) {
            throw new IllegalStateException("decoded " + all.length + " samples, expected " + at);
        }
        return parts;
    }

    /** Any sound file that FFmpeg's program reads, as one channel of {@link Sound#RATE}. */
    static short[] file(Path file) {
        return samples(output(
                Loader.load(org.bytedeco.ffmpeg.ffmpeg.class),
                "-v",
                "error",
                "-i",
                file.toString(),
                "-f",
                "s16le",
                "-ac",
                "1",
                "-ar",
                String.valueOf(Sound.RATE),
                "-"));
    }

    /** A WAV file of {@link Sound#RATE}, by the program's own reader. */
    static short[] wav(Path file) {
        List<short[]> blocks = new ArrayList<>();
        try (WavSource source = WavSource.open(file)) {
            if (source.rate() != Sound.RATE) {
                throw new IllegalArgumentException(
                        "rate of " + file + " (" + source.rate() + ") must be " + Sound.RATE);
            }
            while (source.read() instanceof AudioRead.Samples read) {
                blocks.add(read.block().samples());
            }
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        }
        return Sound.joined(blocks);
    }

    /** What a program writes to its standard output. */
    static byte[] output(String program, String... arguments) {
        List<String> command = new ArrayList<>();
        command.add(program);
        Collections.addAll(command, arguments);
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            process.getOutputStream().close();
            byte[] out = process.getInputStream().readAllBytes();
            int exit = process.waitFor();
            if (exit != 0) {
                throw new IllegalStateException(String.join(" ", command) + " ended with " + exit);
            }
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(program + " was interrupted", e);
        }
    }

    private static short[] samples(byte[] littleEndian) {
        short[] samples = new short[littleEndian.length / 2];
        ByteBuffer.wrap(littleEndian)
                .order(ByteOrder.LITTLE_ENDIAN)
                .asShortBuffer()
                .get(samples);
        return samples;
    }
}
