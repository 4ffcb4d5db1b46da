package org.bookholder.testing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;

/** Writes and reads WAV files for tests. */
public final class Wav {
    private static final double FULL_SCALE = 32_768;

    private Wav() {}

    /** Writes samples of one channel, 16 bit, with the Java platform's own writer. */
    public static Path write(Path file, int rate, short[] samples) {
        ByteBuffer bytes = ByteBuffer.allocate(samples.length * 2).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(samples);
        AudioFormat format = new AudioFormat(rate, 16, 1, true, false);
        try (AudioInputStream in =
                new AudioInputStream(new ByteArrayInputStream(bytes.array()), format, samples.length)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, file.toFile());
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All samples of a file, by the program's own reader. */
    public static short[] samples(Path file) throws ProblemException {
        try (WavSource source = WavSource.open(file)) {
            return samples(source);
        }
    }

    /** All samples that are left of a source. */
    public static short[] samples(WavSource source) throws ProblemException {
        List<short[]> blocks = new ArrayList<>();
        int length = 0;
        while (source.read() instanceof AudioRead.Samples read) {
            blocks.add(read.block().samples());
            length += read.block().samples().length;
        }
        short[] all = new short[length];
        int at = 0;
        for (short[] block : blocks) {
            System.arraycopy(block, 0, all, at, block.length);
            at += block.length;
        }
        return all;
    }

    /** The first seconds, at 16,000 Hz, of the demo's recording, which a synthetic voice reads. */
    public static short[] demo(int seconds) throws ProblemException {
        return Arrays.copyOf(samples(Path.of("demo-scripts/lesson-1.wav")), seconds * 16_000);
    }

    /** A tone with {@code amplitude} of full scale. */
    public static short[] sine(double hertz, double amplitude, int rate, double seconds) {
        short[] samples = new short[(int) Math.round(rate * seconds)];
        for (int i = 0; i < samples.length; i++) {
            double value = amplitude * FULL_SCALE * Math.sin(2 * Math.PI * hertz * i / rate);
            samples[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(value)));
        }
        return samples;
    }

    /** A WAV file's bytes; {@code body} is called for each sample of each channel in {@code channels}. */
    public static byte[] bytes(
            int tag, int rate, int bits, boolean extensible, short[][] channels, BiConsumer<ByteBuffer, Short> body) {
        int frameBytes = channels.length * bits / 8;
        int dataBytes = channels[0].length * frameBytes;
        int formatBytes = extensible ? 40 : 16;
        ByteBuffer out = ByteBuffer.allocate(28 + formatBytes + dataBytes).order(ByteOrder.LITTLE_ENDIAN);
        ascii(out, "RIFF").putInt(20 + formatBytes + dataBytes);
        ascii(out, "WAVEfmt ").putInt(formatBytes);
        out.putShort((short) (extensible ? 0xfffe : tag))
                .putShort((short) channels.length)
                .putInt(rate);
        out.putInt(rate * frameBytes).putShort((short) frameBytes).putShort((short) bits);
        if (extensible) {
            out.putShort((short) 22).putShort((short) bits).putInt(0).putShort((short) tag);
            // The tail of KSDATAFORMAT_SUBTYPE_PCM and its kin: 0000-0010-8000-00AA00389B71.
            out.putShort((short) 0).putInt(0x0010_0000).putInt(0xaa00_0080).putInt(0x719b_3800);
        }
        ascii(out, "data").putInt(dataBytes);
        for (int i = 0; i < channels[0].length; i++) {
            for (short[] channel : channels) {
                body.accept(out, channel[i]);
            }
        }
        return out.array();
    }

    /** Writes a whole file. */
    public static Path write(Path file, byte[] bytes) {
        try {
            return Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ByteBuffer ascii(ByteBuffer out, String text) {
        return out.put(text.getBytes(StandardCharsets.US_ASCII));
    }
}
