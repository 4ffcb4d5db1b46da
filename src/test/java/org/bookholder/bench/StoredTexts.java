package org.bookholder.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.bookholder.journal.event.CheckedText;

/**
 * Where the texts of a journal's events stand in its files: each in one piece, or in pieces of the lengths that pages take. Looked
 * for once in the files as they were, so that it is quickly known what is still whole in a copy of which bytes have changed or are
 * gone, but none have moved.
 */
final class StoredTexts {
    /** What a page holds of a long row itself, and in each page after it (sqlite.org/fileformat2.html, section 1.6). */
    static final int PAGE = 4096;

    private static final int FEWEST_LOCAL = (PAGE - 12) * 32 / 255 - 23;
    private static final List<String> FILES = List.of("journal.db", "journal.db-wal");

    private final Map<String, List<Piece>> pieces;

    private StoredTexts(Map<String, List<Piece>> pieces) {
        this.pieces = pieces;
    }

    /** Looks for texts in the files of a folder. */
    static StoredTexts in(Path folder, List<String> texts) throws IOException {
        Map<String, String> files = files(folder);
        Map<String, List<Piece>> found = new LinkedHashMap<>();
        for (String text : texts) {
            String raw = new String(CheckedText.of(text).getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
            found.put(
                    text,
                    pieces(raw).stream().map(piece -> Piece.in(files, piece)).toList());
        }
        return new StoredTexts(found);
    }

    /** The texts that stand in full in another folder's copy of the files. */
    Set<String> wholeIn(Path folder) throws IOException {
        Map<String, String> files = files(folder);
        Set<String> whole = new HashSet<>();
        pieces.forEach((text, parts) -> {
            if (parts.stream().allMatch(part -> part.isWholeIn(files))) {
                whole.add(text);
            }
        });
        return whole;
    }

    /** The bytes of each file that is there, a character for each. */
    private static Map<String, String> files(Path folder) throws IOException {
        Map<String, String> files = new HashMap<>();
        for (String name : FILES) {
            if (Files.exists(folder.resolve(name))) {
                files.put(name, Files.readString(folder.resolve(name), StandardCharsets.ISO_8859_1));
            }
        }
        return files;
    }

    private static List<String> pieces(String text) {
        int header = 2 + (text.length() * 2 + 13 < 128 ? 1 : text.length() * 2 + 13 < 16_384 ? 2 : 3);
        int row = header + text.length();
        if (row <= PAGE - 35) {
            return List.of(text);
        }
        int first = FEWEST_LOCAL + (row - FEWEST_LOCAL) % (PAGE - 4);
        int local = (first <= PAGE - 35 ? first : FEWEST_LOCAL) - header;
        List<String> pieces = new ArrayList<>(List.of(text.substring(0, local)));
        for (int at = local; at < text.length(); at += PAGE - 4) {
            pieces.add(text.substring(at, Math.min(text.length(), at + PAGE - 4)));
        }
        return pieces;
    }

    /** A place in a file, in bytes from its beginning. */
    private record Place(String file, int at) {}

    /** A part of a text, and all places at which it stands: a page may be in the file and several times in the log. */
    private record Piece(String bytes, List<Place> places) {
        static Piece in(Map<String, String> files, String bytes) {
            List<Place> places = new ArrayList<>();
            files.forEach((name, content) -> {
                for (int at = content.indexOf(bytes); at >= 0; at = content.indexOf(bytes, at + 1)) {
                    places.add(new Place(name, at));
                }
            });
            return new Piece(bytes, List.copyOf(places));
        }

        boolean isWholeIn(Map<String, String> files) {
            return places.stream()
                    .anyMatch(p -> files.getOrDefault(p.file(), "").startsWith(bytes, p.at()));
        }
    }
}
