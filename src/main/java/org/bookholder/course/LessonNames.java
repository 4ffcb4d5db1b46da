package org.bookholder.course;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.files.FileNames;

/**
 * What lessons are called: in commands, in names of films and in marks. That is the name of the script's file without its ending. In a module
 * the folders between the course and the file come first, because two modules may hold files of the same name.
 */
public final class LessonNames {
    private LessonNames() {}

    /** A file as it is written in {@code course.yaml}: from the course's folder on, with slashes. */
    public static String written(Path folder, Path file) {
        return file.startsWith(folder) ? String.join("/", parts(folder.relativize(file))) : file.toString();
    }

    /** The name of the lesson that a file is, for example "basics-01-welcome" for {@code basics/01-welcome.md} in a module. */
    static String of(Path folder, Path file, boolean inModule) {
        return inModule && file.startsWith(folder) ? joined(folder.relativize(file)) : FileNames.stem(file);
    }

    /** The name of the lesson in a module that is written like this. */
    static String joined(Path written) {
        List<String> parts = parts(written.normalize());
        parts.set(parts.size() - 1, FileNames.stem(written));
        return String.join("-", parts);
    }

    /** Whether two texts name one script; the ending of its file may be left out. */
    static boolean areEqual(String named, String script) {
        return joined(Path.of(named)).equals(joined(Path.of(script)));
    }

    /** The same, but the one that is named may leave out the folders, too. */
    static boolean areSame(String named, String script) {
        boolean anywhere = Path.of(named).getNameCount() == 1;
        return areEqual(named, script)
                || (anywhere && FileNames.stem(Path.of(named)).equals(FileNames.stem(Path.of(script))));
    }

    /** Whether the name of a file is a lesson's: exactly, or followed by a character that is not a letter or digit. */
    static boolean begins(Path export, String name) {
        String own = name.toLowerCase(Locale.ROOT);
        String other = FileNames.stem(export).toLowerCase(Locale.ROOT);
        return other.startsWith(own)
                && (other.length() == own.length() || !Character.isLetterOrDigit(other.charAt(own.length())));
    }

    private static List<String> parts(Path path) {
        List<String> parts = new ArrayList<>();
        path.forEach(part -> parts.add(part.toString()));
        return parts;
    }
}
