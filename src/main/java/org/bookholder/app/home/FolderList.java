package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.bookholder.course.CourseReader;
import org.bookholder.problem.ProblemException;

/**
 * Folders to choose from: those of the user, and none outside of their home. Hidden ones are left out.
 *
 * @param userHome the user's home
 */
record FolderList(Path userHome) {
    /** More than anyone looks through. */
    private static final int MOST = 500;

    private static final String FOLDER = "folder";
    private static final String SCRIPT = "script";

    private static final List<String> SCRIPTS = List.of("md", "markdown", "txt", "docx");

    /** Endings of camera and recorder files and of exports. */
    private static final List<String> FILMS = List.of(
            "mp4", "mov", "m4v", "mkv", "avi", "mxf", "mts", "m2ts", "webm", "wav", "mp3", "m4a", "aac", "flac", "ogg",
            "aif", "aiff", "opus", "wma", "3gp");

    /** The endings of files of a kind. */
    static List<String> endings(String kind) {
        return switch (kind) {
            case "film" -> FILMS;
            case "packed" -> List.of("zip");
            case SCRIPT -> SCRIPTS;
            default -> List.of();
        };
    }

    /**
     * The folders in a folder, and the scripts, films, sound files and packed sessions, as JSON.
     *
     * @param path the folder; empty for the user's home
     * @throws ProblemException if it is not the user's, or can't be listed
     */
    String list(String path) throws ProblemException {
        Path folder = path.isEmpty() ? userHome : allowed(path);
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("path", folder.toString());
        json.put("name", name(folder));
        Path up = folder.getParent();
        json.put("up", folder.equals(home()) || up == null ? "" : up.toString());
        ArrayNode folders = json.putArray("folders");
        ArrayNode scripts = json.putArray("scripts");
        ArrayNode files = json.putArray("files");
        for (Path entry : entries(folder)) {
            String kind = kind(entry);
            ObjectNode row = kind.equals(FOLDER) ? folders.addObject() : files.addObject();
            row.put("name", name(entry)).put("path", entry.toString());
            if (!kind.equals(FOLDER)) {
                row.put("kind", kind);
            }
            if (kind.equals(SCRIPT)) {
                scripts.add(name(entry));
            }
        }
        return json.toString();
    }

    /**
     * A folder below the user's home, by its real path.
     *
     * @throws ProblemException if it is none
     */
    Path allowed(String path) throws ProblemException {
        try {
            Path folder = Path.of(path).toRealPath();
            if (Files.isDirectory(folder) && holds(folder)) {
                return folder;
            }
        } catch (IOException | InvalidPathException e) {
            throw new ProblemException("there is no such folder", path, "choose another one", e);
        }
        throw new ProblemException(
                "this folder is hidden or outside of your home", path, "choose one below " + userHome);
    }

    /** Whether a file or folder, by its real path, lies below the user's home and is not hidden. */
    boolean holds(Path real) throws ProblemException {
        Path home = home();
        return real.startsWith(home) && !hidden(home.relativize(real));
    }

    private static boolean hidden(Path below) {
        for (Path part : below) {
            if (part.toString().startsWith(".")) {
                return true;
            }
        }
        return false;
    }

    private Path home() throws ProblemException {
        try {
            return userHome.toRealPath();
        } catch (IOException e) {
            throw new ProblemException("your home can't be read", userHome.toString(), "check its permissions", e);
        }
    }

    private static List<Path> entries(Path folder) throws ProblemException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(entry ->
                            !name(entry).startsWith(".") && !kind(entry).isEmpty())
                    .sorted((a, b) -> name(a).toLowerCase(Locale.ROOT).compareTo(name(b).toLowerCase(Locale.ROOT)))
                    .limit(MOST)
                    .toList();
        } catch (IOException | UncheckedIOException e) {
            throw new ProblemException("this folder can't be read", folder.toString(), "choose another one", e);
        }
    }

    /** What an entry is; empty if it is of no use here. */
    private static String kind(Path entry) {
        if (Files.isDirectory(entry)) {
            return FOLDER;
        }
        String ending = name(entry).toLowerCase(Locale.ROOT).replaceFirst(".*\\.", "");
        return FILMS.contains(ending)
                ? "film"
                : ending.equals("zip") ? "packed" : CourseReader.isScript(entry) ? SCRIPT : "";
    }

    private static String name(Path path) {
        return path.getFileName() == null ? path.toString() : path.getFileName().toString();
    }
}
