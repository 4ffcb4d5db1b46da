package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Every copy of every page that a journal's file and its write-ahead log hold, however damaged. Nothing is taken on trust: not
 * the file's header, not the tree of its pages, not the order of the log.
 *
 * <p>Layout: sqlite.org/fileformat2.html, sections 1.3 (the file) and 4.1 (the log).
 */
final class PageCopies {
    /** SQLite's default since 3.12.0; journals are made with it (sqlite.org/pgszchng2016.html). */
    static final int PAGE_BYTES = 4096;

    private static final int LOG_HEADER_BYTES = 32;
    private static final int FRAME_HEADER_BYTES = 24;
    private static final int LITTLE_ENDIAN_CHECKSUMS = 0x377f0682;
    private static final int BIG_ENDIAN_CHECKSUMS = 0x377f0683;

    private final List<Copy> copies;
    private final Map<Long, List<byte[]>> byNumber = new HashMap<>();

    private PageCopies(List<Copy> copies) {
        this.copies = copies;
        for (Copy copy : copies) {
            List<byte[]> same = byNumber.computeIfAbsent(copy.number(), number -> new ArrayList<>());
            if (same.stream().noneMatch(bytes -> Arrays.equals(bytes, copy.bytes()))) {
                same.add(copy.bytes());
            }
        }
    }

    /** One copy of a page. */
    static final class Copy {
        private final long number;
        private final byte[] bytes;

        private Copy(long number, byte[] bytes) {
            this.number = number;
            this.bytes = bytes;
        }

        /** Which page it is, from 1. */
        long number() {
            return number;
        }

        /** {@value #PAGE_BYTES} bytes; what a file was cut off is 0. Not to be changed. */
        byte[] bytes() {
            return bytes;
        }
    }

    /** Reads a journal's file and its log; one that is missing holds no page. */
    static PageCopies of(Path journal) throws IOException {
        byte[] file = read(journal);
        byte[] log = read(journal.resolveSibling(journal.getFileName() + "-wal"));
        List<Copy> whole = new ArrayList<>();
        List<Copy> doubtful = new ArrayList<>();
        int step = FRAME_HEADER_BYTES + PAGE_BYTES;
        for (int at = LOG_HEADER_BYTES; at + FRAME_HEADER_BYTES < log.length; at += step) {
            Copy copy = new Copy(
                    Integer.toUnsignedLong(ByteBuffer.wrap(log).getInt(at)), page(log, at + FRAME_HEADER_BYTES));
            (isWhole(log, at) ? whole : doubtful).add(0, copy);
        }
        List<Copy> all = new ArrayList<>(whole);
        for (int at = 0; at < file.length; at += PAGE_BYTES) {
            all.add(new Copy(at / PAGE_BYTES + 1, page(file, at)));
        }
        all.addAll(doubtful);
        return new PageCopies(all);
    }

    /** All copies, the most trusted first: frames whose checksum holds, the newest first; the file; the rest of the log. */
    List<Copy> all() {
        return copies;
    }

    /** The copies of one page that differ, in the same order. */
    List<byte[]> of(long number) {
        return byNumber.getOrDefault(number, List.of());
    }

    private static byte[] read(Path file) throws IOException {
        return Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
    }

    private static byte[] page(byte[] bytes, int from) {
        return Arrays.copyOfRange(bytes, from, from + PAGE_BYTES);
    }

    /** A frame's checksum goes on from that of the frame before it, as it is written there, or from the log's header's. */
    private static boolean isWhole(byte[] log, int at) {
        int magic = ByteBuffer.wrap(log).getInt(0);
        boolean known = magic == LITTLE_ENDIAN_CHECKSUMS || magic == BIG_ENDIAN_CHECKSUMS;
        if (!known || at + FRAME_HEADER_BYTES + PAGE_BYTES > log.length) {
            return false;
        }
        ByteBuffer written = ByteBuffer.wrap(log);
        int before = at == LOG_HEADER_BYTES ? LOG_HEADER_BYTES - 8 : at - PAGE_BYTES - 8;
        int[] sum = {written.getInt(before), written.getInt(before + 4)};
        ByteBuffer words = ByteBuffer.wrap(log)
                .order(magic == LITTLE_ENDIAN_CHECKSUMS ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        add(sum, words, at, 8);
        add(sum, words, at + FRAME_HEADER_BYTES, PAGE_BYTES);
        return sum[0] == written.getInt(at + 16) && sum[1] == written.getInt(at + 20);
    }

    private static void add(int[] sum, ByteBuffer words, int from, int count) {
        for (int i = from; i < from + count; i += 8) {
            sum[0] += words.getInt(i) + sum[1];
            sum[1] += words.getInt(i + 4) + sum[0];
        }
    }
}
