package org.bookholder.view.gl;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;

/** Finds font files on the system for characters that Inter lacks. */
final class SystemFonts {
    private static final int DEEP = 6;

    /** Upright sans-serif families that cover many characters come first; other files follow. */
    private static final List<String> LIKELY = List.of(
            "notosanscjk-bold",
            "notosanscjk",
            "notosans-semibold",
            "notosans-bold",
            "notosans",
            "dejavusans-bold",
            "dejavusans",
            "segoeui",
            "seguisym",
            "msyh",
            "meiryo",
            "arialuni",
            "pingfang",
            "hiragino",
            "unifont");

    private SystemFonts() {}

    /** Font files in the usual folders of this system, the most promising first. */
    static List<Path> find() {
        String home = Objects.requireNonNullElse(System.getProperty("user.home"), "");
        String windows = Objects.requireNonNullElse(System.getenv("WINDIR"), "C:\\Windows");
        return find(Stream.of(
                        "/usr/share/fonts",
                        "/usr/local/share/fonts",
                        home + "/.local/share/fonts",
                        "/System/Library/Fonts",
                        "/Library/Fonts",
                        home + "/Library/Fonts",
                        windows + "\\Fonts")
                .map(Path::of)
                .toList());
    }

    /** Font files in {@code folders} and their subfolders; a missing or unreadable folder counts as empty. */
    static List<Path> find(List<Path> folders) {
        List<Path> files = new ArrayList<>();
        for (Path folder : folders) {
            if (Files.isDirectory(folder)) {
                files.addAll(fontsBelow(folder));
            }
        }
        files.sort(Comparator.comparingInt(SystemFonts::rank).thenComparing(Path::toString));
        return List.copyOf(files);
    }

    private static List<Path> fontsBelow(Path folder) {
        try (Stream<Path> all = Files.walk(folder, DEEP)) {
            return all.filter(SystemFonts::isFont).toList();
        } catch (IOException | UncheckedIOException e) {
            return List.of();
        }
    }

    private static boolean isFont(Path file) {
        String name = nameOf(file);
        return name.endsWith(".ttf") || name.endsWith(".otf") || name.endsWith(".ttc");
    }

    private static int rank(Path file) {
        String name = nameOf(file);
        int slanted = name.contains("italic") || name.contains("oblique") || name.contains("mono") ? LIKELY.size() : 0;
        for (int i = 0; i < LIKELY.size(); i++) {
            if (name.startsWith(LIKELY.get(i))) {
                return i + slanted;
            }
        }
        return 2 * LIKELY.size() + slanted;
    }

    private static String nameOf(Path file) {
        return Objects.requireNonNullElse(file.getFileName(), file).toString().toLowerCase(Locale.ROOT);
    }
}
