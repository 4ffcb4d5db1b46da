package org.bookholder.app.session;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * SHA-256 sums of files, by name, written as the program {@code sha256sum} writes and checks them (GNU coreutils manual,
 * "sha2 utilities").
 */
final class Checksums {
    /** The usual name of such a list. */
    static final String FILE = "SHA256SUMS";

    private static final Pattern LINE = Pattern.compile("([0-9a-f]{64}) [ *](.+)");

    private final Map<String, String> sums = new LinkedHashMap<>();

    /** A digest to pass a file's bytes to. */
    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("each Java platform has SHA-256 (MessageDigest)", e);
        }
    }

    /** Reads a list; empty if a line is not one of such a list, or a name comes twice. */
    static Optional<Checksums> read(String text) {
        Checksums read = new Checksums();
        for (String line : text.lines().toList()) {
            Matcher parts = LINE.matcher(line);
            if (!parts.matches() || read.sums.put(parts.group(2), parts.group(1)) != null) {
                return Optional.empty();
            }
        }
        return Optional.of(read);
    }

    /** Adds a file, all of whose bytes were passed to {@code digest}. */
    void add(String name, MessageDigest digest) {
        sums.put(name, HexFormat.of().formatHex(digest.digest()));
    }

    /** Whether the list has this file. */
    boolean has(String name) {
        return sums.containsKey(name);
    }

    /** Whether the list has this file with the sum of the bytes that were passed to {@code digest}. */
    boolean matches(String name, MessageDigest digest) {
        return HexFormat.of().formatHex(digest.digest()).equals(sums.get(name));
    }

    /** The names of the files, in order. */
    Iterable<String> names() {
        return sums.keySet();
    }

    /** The list as text. */
    String text() {
        StringBuilder text = new StringBuilder();
        sums.forEach((name, sum) -> text.append(sum).append("  ").append(name).append('\n'));
        return text.toString();
    }
}
