package org.bookholder.testing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** WAV files of two channels, as a recorder with two microphones writes them. */
public final class Stereo {
    private Stereo() {}

    /** Writes two channels of the same length, 16 bit, with the Java platform's own writer. */
    public static Path write(Path file, int rate, short[] left, short[] right) {
        ByteBuffer bytes = ByteBuffer.allocate(left.length * 4).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < left.length; i++) {
            bytes.putShort(left[i]).putShort(right[i]);
        }
        AudioFormat format = new AudioFormat(rate, 16, 2, true, false);
        try (AudioInputStream in = new AudioInputStream(new ByteArrayInputStream(bytes.array()), format, left.length)) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, file.toFile());
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
