package org.bookholder.view.gl;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.lwjgl.PointerBuffer;
import org.lwjgl.system.MemoryStack;
import org.lwjgl.util.tinyfd.TinyFileDialogs;

/**
 * The system's own dialog for files: a program of the desktop on Linux and macOS, a function of the system on Windows. It needs no window
 * of this program and not its main thread; it waits until the person has chosen. Where there is none it
 * would ask in the terminal, so whoever calls it has to know that there is one. For one thread at a time.
 */
public final class FileDialog {
    private static final String BETWEEN = "|";

    private FileDialog() {}

    /** Lets somebody choose a folder; empty if they have closed the dialog. */
    public static List<Path> folder(String title, String from) {
        return paths(TinyFileDialogs.tinyfd_selectFolderDialog(title, plain(from)));
    }

    /** Lets somebody choose files with certain endings; empty if they have closed the dialog. */
    public static List<Path> files(String title, String from, List<String> endings, boolean several) {
        try (MemoryStack stack = MemoryStack.stackPush()) {
            PointerBuffer patterns = stack.mallocPointer(2 * endings.size());
            for (String ending : endings) {
                patterns.put(stack.UTF8("*." + ending));
                patterns.put(stack.UTF8("*." + ending.toUpperCase(Locale.ROOT)));
            }
            patterns.flip();
            String begin = plain(from);
            return paths(TinyFileDialogs.tinyfd_openFileDialog(
                    title,
                    begin.isEmpty() ? begin : begin + "/",
                    endings.isEmpty() ? null : patterns,
                    "Files of this kind",
                    several));
        }
    }

    /** The library refuses texts that a shell could take for more than a text. */
    private static String plain(String text) {
        return text.matches("[\\p{L}\\p{N} ./_:\\\\+-]*") ? text : "";
    }

    /** The paths in an answer. A bar stands between them, and a name may hold one, too. */
    static List<Path> paths(@Nullable String answer) {
        List<Path> paths = new ArrayList<>();
        String name = "";
        for (String part : answer == null ? new String[0] : answer.split("\\|", -1)) {
            name = name.isEmpty() ? part : name + BETWEEN + part;
            try {
                Path path = Path.of(name);
                if (!name.isEmpty() && Files.exists(path)) {
                    paths.add(path);
                    name = "";
                }
            } catch (InvalidPathException notYetWhole) {
                // The next part belongs to it.
            }
        }
        return paths;
    }
}
