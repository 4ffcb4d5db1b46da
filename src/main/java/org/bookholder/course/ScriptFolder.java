package org.bookholder.course;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;

/** The scripts that lie in a folder, in the order of their names. */
final class ScriptFolder {
    private static final Pattern NUMBER = Pattern.compile("\\d+");
    private static final int DIGITS = 9;
    private static final int MOST_NAMES = 4;

    /** Folders of a course in which scripts may lie that are no lessons. */
    private static final Set<String> NO_MODULES = Set.of(Course.EXPORTS, Course.SESSIONS);

    private ScriptFolder() {}

    /** The scripts in a folder; none if there are none. */
    static List<Path> scripts(Path folder) throws ProblemException {
        return entries(folder, ScriptFolder::isScript);
    }

    /** The folders in it that hold scripts, each a module of the course. */
    static List<Path> modules(Path folder) throws ProblemException {
        List<Path> modules = new ArrayList<>();
        for (Path inner : entries(folder, ScriptFolder::mayBeModule)) {
            if (!scripts(inner).isEmpty()) {
                modules.add(inner);
            }
        }
        return modules;
    }

    /**
     * Folders beside the course's file that look like its modules but are none, because scripts lie beside that file, too: one line, or
     * none. Old scripts may lie in a folder, so there must be at least as many in folders as beside the file.
     */
    static List<String> leftOut(Path folder) throws ProblemException {
        List<Path> beside = scripts(folder);
        List<Path> modules = Files.exists(folder.resolve(Course.FILE)) ? modules(folder) : List.of();
        int inside = 0;
        for (Path module : modules) {
            inside += scripts(module).size();
        }
        if (beside.isEmpty() || inside < beside.size()) {
            return List.of();
        }
        return List.of("the scripts in " + names(modules) + ", because "
                + (beside.size() == 1 ? "one lies" : beside.size() + " lie") + " beside " + Course.FILE + " ("
                + names(beside) + "); if these folders are modules, move " + (beside.size() == 1 ? "it" : "them")
                + " into one of them, or list modules: in " + Course.FILE);
    }

    private static String names(List<Path> files) {
        String first = files.stream()
                .limit(MOST_NAMES)
                .map(file -> String.valueOf(file.getFileName()))
                .collect(Collectors.joining(", "));
        return files.size() > MOST_NAMES ? first + ", \u2026" : first;
    }

    private static boolean mayBeModule(Path folder) {
        String name = String.valueOf(folder.getFileName());
        return Files.isDirectory(folder)
                && !name.startsWith(".")
                && !NO_MODULES.contains(name)
                && !Files.exists(folder.resolve(Course.FILE));
    }

    private static List<Path> entries(Path folder, Predicate<Path> wanted) throws ProblemException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(wanted)
                    .sorted(Comparator.comparing(ScriptFolder::sortedBy))
                    .toList();
        } catch (IOException e) {
            throw new ProblemException("the folder cannot be read", folder.toString(), "check its permissions", e);
        }
    }

    /** Whether a file would be a lesson if it lay in a course. */
    static boolean isScript(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        boolean text =
                name.endsWith(".md") || name.endsWith(".markdown") || name.endsWith(".txt") || name.endsWith(".docx");
        return text
                && !name.startsWith("readme")
                && !name.startsWith(".")
                && !name.startsWith("~")
                && Files.isRegularFile(file);
    }

    /** The title of the module that a folder is: its name without a number before it, for example "First knots" for 02-first-knots. */
    static String title(Path folder) {
        String name = String.valueOf(folder.getFileName());
        String plain =
                name.replaceFirst("^\\d+[\\s._-]*", "").replaceAll("[_-]+", " ").strip();
        return plain.isEmpty() ? name : plain.substring(0, 1).toUpperCase(Locale.ROOT) + plain.substring(1);
    }

    /** So that lesson 10 comes after lesson 9. */
    private static String sortedBy(Path file) {
        return NUMBER.matcher(String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT))
                .replaceAll(m -> m.group().length() >= DIGITS
                        ? m.group()
                        : "0".repeat(DIGITS - m.group().length()) + m.group());
    }
}
