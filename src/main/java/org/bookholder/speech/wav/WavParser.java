package org.bookholder.speech.wav;

import java.io.EOFException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;

/**
 * Reads the chunks of a WAV file up to the start of its samples.
 *
 * <p>If a recording was never closed, the sizes in its header are zero or out of date. If the header and the file's
 * length disagree, the length counts. Chunk layout: Multimedia Programming Interface and Data Specifications 1.0 (IBM
 * and Microsoft, 1991); WAVE_FORMAT_EXTENSIBLE: Microsoft, Multiple Channel Audio Data and WAVE Files; RF64: EBU Tech
 * 3306.
 */
final class WavParser {
    private static final int PCM = 1;
    private static final int IEEE_FLOAT = 3;
    private static final int EXTENSIBLE = 0xfffe;
    private static final int MIN_RATE = 8_000;
    private static final int MAX_RATE = 192_000;
    private static final int CHUNK_HEADER = 8;
    private static final int RIFF_HEADER = 12;

    private final RandomAccessFile file;
    private final String name;
    private final long length;
    private final List<String> warnings = new ArrayList<>();
    private @Nullable ByteBuffer format;

    WavParser(RandomAccessFile file, String name) throws IOException {
        this.file = file;
        this.name = name;
        this.length = file.length();
    }

    WavDescription parse() throws IOException, ProblemException {
        if (length == 0) {
            throw problem("the file is empty", "record or export it again");
        }
        ByteBuffer riff = length < RIFF_HEADER ? ByteBuffer.allocate(RIFF_HEADER) : bytes(0, RIFF_HEADER);
        String magic = text(riff, 0);
        if (!(magic.equals("RIFF") || magic.equals("RF64")) || !text(riff, 8).equals("WAVE")) {
            throw problem("this is not a WAV file", "give a recording saved as WAV");
        }
        long riffEnd = CHUNK_HEADER + Integer.toUnsignedLong(riff.getInt(4));
        for (long at = RIFF_HEADER; at + CHUNK_HEADER <= length; ) {
            ByteBuffer chunk = bytes(at, CHUNK_HEADER);
            long size = Integer.toUnsignedLong(chunk.getInt(4));
            long body = at + CHUNK_HEADER;
            if (text(chunk, 0).equals("data")) {
                return description(body, dataBytes(body, size, riffEnd));
            }
            if (text(chunk, 0).equals("fmt ")) {
                format = bytes(body, (int) Math.min(size, 40));
            }
            at = body + size + (size & 1);
        }
        throw problem("the WAV file ends before its samples", "record or export it again");
    }

    /** The length of the samples in bytes: the header's value if it is plausible, otherwise everything that follows. */
    private long dataBytes(long body, long size, long riffEnd) throws IOException {
        long rest = length - body;
        boolean unclosed = size == 0xffff_ffffL || (size == 0 && riffEnd != length);
        if (unclosed && !chunksFrom(body)) {
            warnings.add("the recording was not closed; it is read to the end of the file");
            return rest;
        }
        if (size > rest) {
            warnings.add("the file is cut short; it is read as far as it goes");
            return rest;
        }
        long end = body + size;
        if (end < length && riffEnd == end && !chunksFrom(end)) {
            warnings.add("the recording was not closed; it is read past the length it states");
            return rest;
        }
        return size;
    }

    /**
     * Whether the rest of the file is a series of chunks that ends exactly at the end of the file, and therefore not
     * sound.
     */
    private boolean chunksFrom(long start) throws IOException {
        long at = start;
        while (at + CHUNK_HEADER <= length) {
            ByteBuffer chunk = bytes(at, CHUNK_HEADER);
            if (!text(chunk, 0).matches("[ -~]{4}")) {
                return false;
            }
            long size = Integer.toUnsignedLong(chunk.getInt(4));
            at += CHUNK_HEADER + size + (size & 1);
        }
        return at > start && (at == length || at == length + 1);
    }

    private WavDescription description(long body, long dataBytes) throws ProblemException {
        ByteBuffer f = format;
        if (f == null || f.capacity() < 16) {
            throw problem("the WAV file does not say how its samples are written", "record or export it again");
        }
        int channels = Short.toUnsignedInt(f.getShort(2));
        long rate = Integer.toUnsignedLong(f.getInt(4));
        int frameBytes = Short.toUnsignedInt(f.getShort(12));
        if (channels == 0 || frameBytes % channels != 0) {
            throw problem("the WAV file's header is damaged", "record or export it again");
        }
        if (rate < MIN_RATE || rate > MAX_RATE) {
            throw problem(
                    "the sample rate of " + rate + " Hz is out of range",
                    "export it at a rate from " + MIN_RATE + " to " + MAX_RATE + " Hz");
        }
        SampleFormat sample = sampleFormat(f, frameBytes / channels);
        long frames = dataBytes / frameBytes;
        if (frames == 0) {
            throw problem("the WAV file holds no sound", "record or export it again");
        }
        if (dataBytes % frameBytes != 0) {
            warnings.add("the last sample is incomplete and is left out");
        }
        return new WavDescription((int) rate, channels, sample, body, frames, warnings);
    }

    /**
     * The sample format. Samples with fewer bits are left-justified in their bytes, so only the number of bytes
     * matters.
     */
    private SampleFormat sampleFormat(ByteBuffer f, int sampleBytes) throws ProblemException {
        int tag = Short.toUnsignedInt(f.getShort(0));
        if (tag == EXTENSIBLE && f.capacity() >= 26) {
            tag = Short.toUnsignedInt(f.getShort(24));
        }
        String kind = tag + "/" + sampleBytes;
        return switch (kind) {
            case PCM + "/1" -> SampleFormat.INT_8;
            case PCM + "/2" -> SampleFormat.INT_16;
            case PCM + "/3" -> SampleFormat.INT_24;
            case PCM + "/4" -> SampleFormat.INT_32;
            case IEEE_FLOAT + "/4" -> SampleFormat.FLOAT_32;
            case IEEE_FLOAT + "/8" -> SampleFormat.FLOAT_64;
            default ->
                throw problem(
                        String.format(
                                Locale.ROOT, "the sample format 0x%04x of %d bytes is not read", tag, sampleBytes),
                        "export it as PCM of 16 or 24 bit");
        };
    }

    private ByteBuffer bytes(long at, int count) throws IOException {
        byte[] bytes = new byte[count];
        file.seek(at);
        try {
            file.readFully(bytes);
        } catch (EOFException e) {
            return ByteBuffer.allocate(0);
        }
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static String text(ByteBuffer bytes, int offset) {
        byte[] four = new byte[4];
        bytes.get(offset, four);
        return new String(four, StandardCharsets.ISO_8859_1);
    }

    private ProblemException problem(String what, String remedy) {
        return new ProblemException(what, name, remedy);
    }
}
