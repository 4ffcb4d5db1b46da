package org.bookholder.testing;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Damages files at random, each time in the same way for the same seed. */
public final class Damage {
    /** How many printable characters ASCII has, from the space on. */
    private static final int PRINTABLE = 95;

    private static final int ANY = 256;
    private static final int LONGEST = 64;
    private static final Set<String> TEXTS = Set.of("word/document.xml", "content.xml");

    private final Random random;

    /** Damages that follow from a seed. */
    public Damage(long seed) {
        this.random = new Random(seed);
    }

    /**
     * One to eight damages: a byte changed, a stretch cut out, repeated, made one byte, or the end cut off.
     *
     * @param isText whether only printable ASCII is put in: a text with other bytes is refused before it is parsed
     */
    public byte[] of(byte[] whole, boolean isText) {
        byte[] bytes = whole.clone();
        for (int i = 1 + random.nextInt(8); i > 0 && bytes.length > 0; i--) {
            int at = random.nextInt(8) == 0
                    ? random.nextInt(Math.min(LONGEST, bytes.length))
                    : random.nextInt(bytes.length);
            int length = Math.min(bytes.length - at, 1 + random.nextInt(LONGEST));
            switch (random.nextInt(6)) {
                case 0, 1 -> bytes[at] = any(isText);
                case 2 -> bytes = joined(bytes, at, bytes, at + length);
                case 3 -> bytes = joined(bytes, at + length, bytes, at);
                case 4 -> Arrays.fill(bytes, at, at + length, isText ? any(true) : 0);
                default -> bytes = random.nextInt(4) == 0 ? Arrays.copyOf(bytes, at) : bytes;
            }
        }
        return bytes;
    }

    /** A document that is an archive, with its text damaged and packed anew, so that its checksums are right. */
    public byte[] insideArchive(byte[] archive) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry part = in.getNextEntry(); part != null; part = in.getNextEntry()) {
                out.putNextEntry(new ZipEntry(part.getName()));
                byte[] text = in.readAllBytes();
                out.write(TEXTS.contains(part.getName()) ? of(text, true) : text);
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    private byte any(boolean isText) {
        return (byte) (isText ? ' ' + random.nextInt(PRINTABLE) : random.nextInt(ANY));
    }

    /** The first bytes of one file, followed by another from {@code from} on. */
    private static byte[] joined(byte[] first, int to, byte[] second, int from) {
        byte[] all = Arrays.copyOf(first, to + second.length - from);
        System.arraycopy(second, from, all, to, second.length - from);
        return all;
    }
}
