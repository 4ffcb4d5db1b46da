package org.bookholder.course;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.settings.Setting;
import org.bookholder.settings.Settings;

/**
 * Reads a course's folder: {@code course.yaml} and the scripts that it names. Without that file, or if it names no
 * lessons, every script in the folder is a lesson, in the order of their names.
 */
public final class CourseReader {
    private static final Pattern NUMBER = Pattern.compile("\\d+");
    private static final int DIGITS = 9;

    private final Path folder;
    private final CourseSettings settings;
    private final boolean leavesOut;
    private final LessonScripts.Source scripts;
    private final List<UnreadableLesson> unreadable = new ArrayList<>();

    private CourseReader(Path folder, CourseSettings settings, boolean leavesOut, LessonScripts.Source scripts) {
        this.folder = folder;
        this.settings = settings;
        this.leavesOut = leavesOut;
        this.scripts = scripts;
    }

    /**
     * Reads the course in {@code folder}.
     *
     * @throws ProblemException if there is no such folder, it holds no script, two lessons have one name, or something
     *     in {@code course.yaml} or in a script must be fixed
     */
    public static Course read(Path folder) throws ProblemException {
        return read(folder, false, ScriptReader::read);
    }

    /**
     * The same, but a lesson whose script can't be read is left out and named in {@link Course#unreadable()}; a problem only
     * if none can be read.
     */
    public static Course readable(Path folder) throws ProblemException {
        return read(folder, true, ScriptReader::read);
    }

    /** The same for those who look at a course again and again. */
    public static Course readable(Path folder, LessonScripts scripts) throws ProblemException {
        Course course = read(folder, true, scripts::read);
        scripts.keep(course.lessons());
        return course;
    }

    private static Course read(Path folder, boolean leavesOut, LessonScripts.Source scripts) throws ProblemException {
        if (!Files.isDirectory(folder)) {
            boolean there = Files.exists(folder);
            throw new ProblemException(
                    there ? "this is not a folder" : "there is no such folder",
                    folder.toString(),
                    "name the folder with the course's scripts");
        }
        CourseSettings settings = CourseSettings.read(folder);
        return new CourseReader(folder, settings, leavesOut, scripts).course();
    }

    /**
     * The folder of the course that a file belongs to: the nearest one above it with a {@code course.yaml}, or the one that
     * holds scripts and, in {@code exports}, the file.
     */
    public static Optional<Path> around(Path file) {
        Path place = file.toAbsolutePath().normalize().getParent();
        for (Path up = place; up != null; up = up.getParent()) {
            if (Files.isRegularFile(up.resolve(Course.FILE))) {
                return Optional.of(up);
            }
        }
        return Optional.ofNullable(place)
                .filter(p -> p.endsWith(Course.EXPORTS))
                .map(Path::getParent)
                .filter(CourseReader::holdsScript);
    }

    /** The pace that the course in {@code folder} sets for scripts that set none, in words per minute. */
    public static OptionalInt pace(Path folder) throws ProblemException {
        return CourseSettings.read(folder).pace();
    }

    private static boolean holdsScript(Path folder) {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.anyMatch(CourseReader::isScript);
        } catch (IOException e) {
            return false;
        }
    }

    private Course course() throws ProblemException {
        List<Lesson> lessons = new ArrayList<>();
        if (settings.lessons().isEmpty()) {
            Map<String, LessonKind> kinds = settings.kinds();
            for (Path file : scripts()) {
                String name = String.valueOf(file.getFileName());
                add(lessons, file, kinds.getOrDefault(name, LessonKind.PRESENTER), file.toString());
            }
        } else {
            for (Settings.Item item : settings.lessons()) {
                add(lessons, item);
            }
        }
        if (lessons.isEmpty()) {
            UnreadableLesson first = unreadable.get(0);
            throw new ProblemException(
                    "no lesson can be read; the first one: " + first.why(),
                    folder.toString(),
                    "mend one of the scripts");
        }
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return new Course(
                folder,
                settings.title().orElse(name == null ? "Course" : name.toString()),
                lessons,
                unreadable,
                settings.shooting(),
                settings.editing(),
                settings.delivery(),
                settings.costs(lessons.size()),
                settings.launch());
    }

    private void add(List<Lesson> lessons, Settings.Item item) throws ProblemException {
        Setting script;
        LessonKind kind = LessonKind.PRESENTER;
        if (item.group().isPresent()) {
            Settings group = item.group().get().only(List.of("script", "kind"));
            Optional<Setting> given = group.value("script");
            if (given.isEmpty()) {
                throw group.problem("a lesson has no script", "write script: and the name of its file");
            }
            script = given.get();
            Optional<Setting> kindGiven = group.value("kind");
            if (kindGiven.isPresent()) {
                kind = LessonKind.of(kindGiven.get().oneOf(LessonKind.labels()));
            }
        } else {
            script = item.value().orElseThrow();
        }
        add(lessons, resolve(folder, script), kind, script.where());
    }

    static Path resolve(Path folder, Setting name) throws ProblemException {
        try {
            Path file = folder.resolve(name.text());
            if (Files.isRegularFile(file)) {
                return file;
            }
        } catch (InvalidPathException e) {
            throw new ProblemException(
                    "'" + name.text() + "' is no file name", name.where(), "write the name of a file in the folder", e);
        }
        throw name.problem(
                "there is no file '" + name.text() + "' in the course's folder",
                "write the name of a file that is there");
    }

    private void add(List<Lesson> lessons, Path file, LessonKind kind, String where) throws ProblemException {
        int number = lessons.size() + unreadable.size() + 1;
        Script script;
        try {
            script = scripts.read(file);
        } catch (ProblemException e) {
            if (!leavesOut) {
                throw e;
            }
            String message = String.valueOf(e.getMessage()).replace(folder + File.separator, "");
            String why = ScriptReader.isUnwritten(e)
                    ? file.getFileName() + " has no words to read yet; write them as plain paragraphs"
                    : message;
            unreadable.add(new UnreadableLesson(number, file, why));
            return;
        }
        Lesson lesson = new Lesson(number, file, settings.paced(script), kind);
        for (Lesson other : lessons) {
            boolean sameName = other.name().equalsIgnoreCase(lesson.name());
            if (sameName || other.title().equalsIgnoreCase(lesson.title())) {
                throw new ProblemException(
                        "two lessons have the same " + (sameName ? "name" : "title") + " '"
                                + (sameName ? lesson.name() : lesson.title()) + "' ("
                                + other.file().getFileName()
                                + " and " + file.getFileName() + ")",
                        where,
                        sameName ? "rename one of the files" : "give one of them another title");
            }
        }
        lessons.add(lesson);
    }

    private List<Path> scripts() throws ProblemException {
        try (Stream<Path> entries = Files.list(folder)) {
            List<Path> found = entries.filter(CourseReader::isScript)
                    .sorted(Comparator.comparing(CourseReader::sortedBy))
                    .toList();
            if (found.isEmpty()) {
                throw new ProblemException(
                        "the folder holds no script",
                        folder.toString(),
                        "put lessons into it as .md, .txt or .docx files");
            }
            return found;
        } catch (IOException e) {
            throw new ProblemException("the folder cannot be read", folder.toString(), "check its permissions", e);
        }
    }

    /** Whether a file would be a lesson if it lay in a course. */
    public static boolean isScript(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        boolean text =
                name.endsWith(".md") || name.endsWith(".markdown") || name.endsWith(".txt") || name.endsWith(".docx");
        return text
                && !name.startsWith("readme")
                && !name.startsWith(".")
                && !name.startsWith("~")
                && Files.isRegularFile(file);
    }

    /** So that lesson 10 comes after lesson 9. */
    private static String sortedBy(Path file) {
        return NUMBER.matcher(String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT))
                .replaceAll(m -> m.group().length() >= DIGITS
                        ? m.group()
                        : "0".repeat(DIGITS - m.group().length()) + m.group());
    }
}
