package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
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

    /**
     * The folders and scripts in a folder, as JSON.
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
        for (Path entry : entries(folder)) {
            if (Files.isDirectory(entry)) {
                folders.addObject().put("name", name(entry)).put("path", entry.toString());
            } else if (CourseReader.isScript(entry)) {
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
            if (folder.startsWith(home()) && Files.isDirectory(folder)) {
                return folder;
            }
        } catch (IOException | InvalidPathException e) {
            throw new ProblemException("there is no such folder", path, "choose another one", e);
        }
        throw new ProblemException("this folder is outside of your home", path, "choose one below " + userHome);
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
            return entries.filter(entry -> !name(entry).startsWith("."))
                    .sorted((a, b) -> name(a).toLowerCase(Locale.ROOT).compareTo(name(b).toLowerCase(Locale.ROOT)))
                    .limit(MOST)
                    .toList();
        } catch (IOException e) {
            throw new ProblemException("this folder can't be read", folder.toString(), "choose another one", e);
        }
    }

    private static String name(Path path) {
        return path.getFileName() == null ? path.toString() : path.getFileName().toString();
    }
}
