package org.bookholder.view.gl;

import static org.lwjgl.util.freetype.FreeType.FT_Done_FreeType;
import static org.lwjgl.util.freetype.FreeType.FT_IS_SCALABLE;
import static org.lwjgl.util.freetype.FreeType.FT_Init_FreeType;
import static org.lwjgl.util.freetype.FreeType.FT_New_Face;
import static org.lwjgl.util.freetype.FreeType.FT_New_Memory_Face;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.view.layout.Face;
import org.jspecify.annotations.Nullable;
import org.lwjgl.PointerBuffer;
import org.lwjgl.system.Configuration;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.util.freetype.FT_Face;
import org.lwjgl.util.freetype.FreeType;

/**
 * The fonts: Inter, which comes with the program, and system fonts for characters that Inter lacks. Confined to one
 * thread.
 */
final class Fonts implements AutoCloseable {
    private static final String FOLDER = "/com/formdev/flatlaf/fonts/inter/";
    private static final int MOST_OPENED = 60;

    private final long library;
    private final Map<Face, Typeface> faces = new EnumMap<>(Face.class);
    private final Supplier<List<Path>> finder;
    private @Nullable Deque<Path> candidates;
    private final List<Typeface> others = new ArrayList<>();
    private final Map<String, Optional<Typeface>> found = new HashMap<>();

    /**
     * Opens Inter. When a character is missing, {@code finder} supplies font files of the system, the most promising
     * first.
     */
    Fonts(Supplier<List<Path>> finder) {
        this.finder = finder;
        Configuration.HARFBUZZ_LIBRARY_NAME.set(FreeType.getLibrary());
        try (MemoryStack stack = MemoryStack.stackPush()) {
            PointerBuffer pointer = stack.mallocPointer(1);
            check(FT_Init_FreeType(pointer), "FT_Init_FreeType");
            library = pointer.get(0);
        }
        for (Face face : Face.values()) {
            faces.put(face, open(FOLDER + fileOf(face)));
        }
    }

    /**
     * The font with which to draw a character together with its marks; empty if no font has it. If no font has the
     * marks too, a font that has only the character is used.
     */
    Optional<Typeface> of(Face face, String cluster) {
        Typeface own = of(face);
        if (isUnseen(cluster.codePointAt(0)) || has(own, cluster)) {
            return Optional.of(own);
        }
        Optional<Typeface> whole = found.computeIfAbsent(cluster, this::search);
        if (whole.isPresent() || cluster.length() == Character.charCount(cluster.codePointAt(0))) {
            return whole;
        }
        return of(face, Character.toString(cluster.codePointAt(0)));
    }

    /** Whether our own font for {@code face} has every character of a text. */
    boolean ownHasAll(Face face, String text, int from, int to) {
        Typeface own = of(face);
        for (int i = from; i < to; i += Character.charCount(text.codePointAt(i))) {
            if (!own.has(text.codePointAt(i)) && !isUnseen(text.codePointAt(i))) {
                return false;
            }
        }
        return true;
    }

    /** A composed character may replace a letter and its marks. */
    private static boolean has(Typeface font, String cluster) {
        return hasEach(font, cluster) || hasEach(font, Normalizer.normalize(cluster, Normalizer.Form.NFC));
    }

    private static boolean hasEach(Typeface font, String cluster) {
        return cluster.codePoints().allMatch(c -> isUnseen(c) || font.has(c));
    }

    /** Spaces, joiners, direction marks and variation selectors need no glyph. */
    private static boolean isUnseen(int codePoint) {
        int type = Character.getType(codePoint);
        return Character.isWhitespace(codePoint)
                || Character.isSpaceChar(codePoint)
                || type == Character.FORMAT
                || type == Character.CONTROL
                || (codePoint >= 0xFE00 && codePoint <= 0xFE0F);
    }

    /** The font for a face. */
    Typeface of(Face face) {
        Typeface own = faces.get(face);
        if (own == null) {
            throw new IllegalStateException("face " + face + " is not open");
        }
        return own;
    }

    @Override
    public void close() {
        faces.values().forEach(Typeface::close);
        others.forEach(Typeface::close);
        check(FT_Done_FreeType(library), "FT_Done_FreeType");
    }

    static void check(int error, String call) {
        if (error != 0) {
            throw new IllegalStateException(call + " failed with error " + error);
        }
    }

    private static String fileOf(Face face) {
        return switch (face) {
            case READING -> "Inter-SemiBold.otf";
            case DIRECTION -> "Inter-Italic.otf";
            case FIGURE -> "Inter-Regular.otf";
        };
    }

    private Optional<Typeface> search(String cluster) {
        for (Typeface other : others) {
            if (has(other, cluster)) {
                return Optional.of(other);
            }
        }
        Deque<Path> left = candidates == null ? new ArrayDeque<>(finder.get()) : candidates;
        candidates = left;
        while (!left.isEmpty() && others.size() < MOST_OPENED) {
            Optional<Typeface> next = openFile(left.removeFirst());
            next.ifPresent(others::add);
            if (next.isPresent() && has(next.get(), cluster)) {
                return next;
            }
        }
        return Optional.empty();
    }

    private Optional<Typeface> openFile(Path file) {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            PointerBuffer pointer = stack.mallocPointer(1);
            if (FT_New_Face(library, file.toString(), 0, pointer) != 0) {
                return Optional.empty();
            }
            FT_Face face = FT_Face.create(pointer.get(0));
            Typeface typeface = new Typeface(face, null);
            if (!FT_IS_SCALABLE(face)) {
                typeface.close();
                return Optional.empty();
            }
            return Optional.of(typeface);
        }
    }

    private Typeface open(String resource) {
        ByteBuffer bytes = bytes(resource);
        try (MemoryStack stack = MemoryStack.stackPush()) {
            PointerBuffer pointer = stack.mallocPointer(1);
            check(FT_New_Memory_Face(library, bytes, 0, pointer), "FT_New_Memory_Face of " + resource);
            return new Typeface(FT_Face.create(pointer.get(0)), bytes);
        }
    }

    private static ByteBuffer bytes(String resource) {
        try (InputStream in = Fonts.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the font " + resource + " is not on the class path");
            }
            byte[] bytes = in.readAllBytes();
            return MemoryUtil.memAlloc(bytes.length).put(bytes).flip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
