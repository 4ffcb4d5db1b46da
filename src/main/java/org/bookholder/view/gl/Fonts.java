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
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.view.Face;
import org.lwjgl.PointerBuffer;
import org.lwjgl.system.Configuration;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.system.MemoryUtil;
import org.lwjgl.util.freetype.FT_Face;
import org.lwjgl.util.freetype.FreeType;

/**
 * The fonts: Inter, which comes with the program, and for characters that Inter lacks whatever the system has. Where
 * nothing has a character, Inter's box for a missing glyph is drawn. Confined to one thread.
 */
final class Fonts implements AutoCloseable {
    private static final String FOLDER = "/com/formdev/flatlaf/fonts/inter/";
    private static final int MOST_OPENED = 60;

    private final long library;
    private final Map<Face, Typeface> faces = new EnumMap<>(Face.class);
    private final Deque<Path> candidates;
    private final List<Typeface> others = new ArrayList<>();
    private final Map<Integer, Optional<Typeface>> found = new HashMap<>();

    /** Opens the fonts; {@code candidates} are font files of the system, the likeliest first. */
    Fonts(List<Path> candidates) {
        Configuration.HARFBUZZ_LIBRARY_NAME.set(FreeType.getLibrary());
        try (MemoryStack stack = MemoryStack.stackPush()) {
            PointerBuffer pointer = stack.mallocPointer(1);
            check(FT_Init_FreeType(pointer), "FT_Init_FreeType");
            library = pointer.get(0);
        }
        for (Face face : Face.values()) {
            faces.put(face, open(FOLDER + fileOf(face)));
        }
        this.candidates = new ArrayDeque<>(candidates);
    }

    /** The font to draw a character with. */
    Typeface of(Face face, int codePoint) {
        Typeface own = of(face);
        if (own.has(codePoint)) {
            return own;
        }
        return found.computeIfAbsent(codePoint, this::search).orElse(own);
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

    private Optional<Typeface> search(int codePoint) {
        for (Typeface other : others) {
            if (other.has(codePoint)) {
                return Optional.of(other);
            }
        }
        while (!candidates.isEmpty() && others.size() < MOST_OPENED) {
            Optional<Typeface> next = openFile(candidates.removeFirst());
            next.ifPresent(others::add);
            if (next.isPresent() && next.get().has(codePoint)) {
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
