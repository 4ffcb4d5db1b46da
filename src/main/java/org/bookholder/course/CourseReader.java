package org.bookholder.course;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.bookholder.files.FileNames;
import org.bookholder.files.SideBySide;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.settings.Setting;
import org.bookholder.settings.Settings;

/**
 * Reads a course's folder: {@code course.yaml} and the scripts that it names, in modules or outside of them. Without that file, or if it
 * names no lessons, every script in the folder is a lesson, in the order of their names. If there is none beside {@code course.yaml}, each
 * folder there that holds scripts is a module.
 */
public final class CourseReader {
    private final Path folder;
    private final CourseSettings settings;
    private final boolean leavesOut;
    private final LessonScripts.Source scripts;
    private final SideBySide sideBySide;
    private final List<Entry> entries = new ArrayList<>();
    private final List<CourseModule> modules = new ArrayList<>();
    private final List<Lesson> lessons = new ArrayList<>();
    private final List<UnreadableLesson> unreadable = new ArrayList<>();

    /**
     * A script that is a lesson.
     *
     * @param where it is named so, for messages
     */
    private record Entry(Path file, LessonKind kind, Optional<CourseModule> module, String where) {}

    /** A script, or why there is none. */
    private record Parsed(Optional<Script> script, Optional<ProblemException> problem) {}

    private CourseReader(
            Path folder,
            CourseSettings settings,
            boolean leavesOut,
            LessonScripts.Source scripts,
            SideBySide sideBySide) {
        this.folder = folder;
        this.settings = settings;
        this.leavesOut = leavesOut;
        this.scripts = scripts;
        this.sideBySide = sideBySide;
    }

    /**
     * Reads the course in {@code folder}.
     *
     * @throws ProblemException if there is no such folder, it holds no script, two lessons have one name, or something
     *     in {@code course.yaml} or in a script must be fixed
     */
    public static Course read(Path folder) throws ProblemException {
        return read(folder, false, ScriptReader::read, SideBySide.ONE_BY_ONE);
    }

    /**
     * The same, but a lesson whose script can't be read is left out and named in {@link Course#unreadable()}; a problem only
     * if none can be read.
     */
    public static Course readable(Path folder) throws ProblemException {
        return read(folder, true, ScriptReader::read, SideBySide.ONE_BY_ONE);
    }

    /** The same, with the scripts that are known already; those of now are known from then on. */
    public static Course readable(Path folder, LessonScripts scripts) throws ProblemException {
        Course course = read(folder, true, scripts::read, scripts.sideBySide());
        scripts.keep(course.lessons());
        return course;
    }

    private static Course read(Path folder, boolean leavesOut, LessonScripts.Source scripts, SideBySide sideBySide)
            throws ProblemException {
        if (!Files.isDirectory(folder)) {
            boolean there = Files.exists(folder);
            throw new ProblemException(
                    there ? "this is not a folder" : "there is no such folder",
                    folder.toString(),
                    "name the folder with the course's scripts");
        }
        CourseSettings settings = CourseSettings.read(folder);
        return new CourseReader(folder, settings, leavesOut, scripts, sideBySide).course();
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

    /** How things are said in the course in {@code folder}, by what is written, as was chosen for it. */
    public static Map<String, String> sayings(Path folder) throws ProblemException {
        return CourseSettings.read(folder).sayings();
    }

    private static boolean holdsScript(Path folder) {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.anyMatch(ScriptFolder::isScript);
        } catch (IOException e) {
            return false;
        }
    }

    private Course course() throws ProblemException {
        if (settings.listsLessons()) {
            listed();
        } else {
            found();
        }
        List<Parsed> parsed = sideBySide.each(entries, this::parsed);
        for (int i = 0; i < entries.size(); i++) {
            add(i + 1, entries.get(i), parsed.get(i));
        }
        if (lessons.isEmpty()) {
            throw nothingToRead();
        }
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return new Course(
                folder,
                settings.title().orElse(name == null ? "Course" : name.toString()),
                modules,
                lessons,
                unreadable,
                settings.listsLessons() ? List.of() : ScriptFolder.leftOut(folder),
                named(settings.shooting()),
                settings.editing(),
                settings.delivery(),
                settings.costs(lessons.size()),
                settings.launch());
    }

    private ProblemException nothingToRead() {
        UnreadableLesson first = unreadable.get(0);
        return unreadable.stream().allMatch(UnreadableLesson::unwritten)
                ? new ProblemException(
                        "no lesson has words to read yet",
                        folder.toString(),
                        "write the first one, " + first.fileName() + ", as plain paragraphs")
                : new ProblemException(
                        "no lesson can be read; the first one: " + first.why(),
                        folder.toString(),
                        "mend one of the scripts");
    }

    /** The lessons that the file lists: those in no module first. */
    private void listed() throws ProblemException {
        for (Settings.Item item : settings.lessons()) {
            add(item, Optional.empty());
        }
        for (CourseSettings.ListedModule one : settings.modules()) {
            Optional<CourseModule> module = Optional.of(module(one.title()));
            for (Settings.Item item : one.lessons()) {
                add(item, module);
            }
        }
    }

    /** The lessons that lie in the folder, or in the folders in it. */
    private void found() throws ProblemException {
        Map<String, LessonKind> kinds = settings.kinds();
        for (Path file : ScriptFolder.scripts(folder)) {
            add(file, kinds, Optional.empty());
        }
        boolean isCourse = Files.exists(folder.resolve(Course.FILE));
        if (entries.isEmpty() && isCourse) {
            for (Path inner : ScriptFolder.modules(folder)) {
                Optional<CourseModule> module = Optional.of(module(ScriptFolder.title(inner)));
                for (Path file : ScriptFolder.scripts(inner)) {
                    add(file, kinds, module);
                }
            }
        }
        if (entries.isEmpty()) {
            throw new ProblemException(
                    "the folder holds no script", folder.toString(), "put lessons into it as .md, .txt or .docx files");
        }
    }

    private CourseModule module(String title) {
        CourseModule module = new CourseModule(modules.size() + 1, title);
        modules.add(module);
        return module;
    }

    private void add(Path file, Map<String, LessonKind> kinds, Optional<CourseModule> module) {
        LessonKind kind = kinds.getOrDefault(LessonNames.written(folder, file), LessonKind.PRESENTER);
        entries.add(new Entry(file, kind, module, file.toString()));
    }

    /** The same recording days, with the names of the lessons that were put on them. */
    private Shooting named(Shooting shooting) {
        List<Shooting.Day> days = shooting.days().stream()
                .map(day -> new Shooting.Day(
                        day.date(),
                        day.from(),
                        day.length(),
                        day.lessons().stream().map(this::named).toList()))
                .toList();
        return shooting.on(days);
    }

    private String named(String written) {
        return lesson(written, LessonNames::areEqual)
                .or(() -> lesson(written, LessonNames::areSame))
                .map(Lesson::name)
                .orElseGet(() -> FileNames.stem(Path.of(written)));
    }

    private Optional<Lesson> lesson(String written, BiPredicate<String, String> same) {
        return lessons.stream()
                .filter(lesson -> same.test(written, LessonNames.written(folder, lesson.file())))
                .findFirst();
    }

    private void add(Settings.Item item, Optional<CourseModule> module) throws ProblemException {
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
        entries.add(new Entry(resolve(folder, script), kind, module, script.where()));
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

    private Parsed parsed(Entry entry) {
        try {
            return new Parsed(Optional.of(scripts.read(entry.file())), Optional.empty());
        } catch (ProblemException e) {
            return new Parsed(Optional.empty(), Optional.of(e));
        }
    }

    private void add(int number, Entry entry, Parsed parsed) throws ProblemException {
        Path file = entry.file();
        String name = LessonNames.of(folder, file, entry.module().isPresent());
        if (parsed.problem().isPresent()) {
            if (!leavesOut) {
                throw parsed.problem().get();
            }
            unreadable.add(unreadable(number, name, entry, parsed.problem().get()));
            return;
        }
        Script script = settings.paced(parsed.script().orElseThrow());
        Lesson lesson = new Lesson(number, name, file, script, entry.kind(), entry.module());
        for (Lesson other : lessons) {
            boolean sameName = other.name().equalsIgnoreCase(lesson.name());
            boolean sameTitle = other.title().equalsIgnoreCase(lesson.title())
                    && other.module().equals(lesson.module());
            if (sameName || sameTitle) {
                throw new ProblemException(
                        "two lessons have the same " + (sameName ? "name" : "title") + " '"
                                + (sameName ? lesson.name() : lesson.title()) + "' ("
                                + other.file().getFileName()
                                + " and " + file.getFileName() + ")",
                        entry.where(),
                        sameName ? "rename one of the files" : "give one of them another title");
            }
        }
        lessons.add(lesson);
    }

    private UnreadableLesson unreadable(int number, String name, Entry entry, ProblemException problem) {
        boolean unwritten = ScriptReader.isUnwritten(problem);
        String why = unwritten
                ? entry.file().getFileName() + " has no words to read yet; write them as plain paragraphs"
                : String.valueOf(problem.getMessage()).replace(folder + File.separator, "");
        return new UnreadableLesson(number, name, entry.file(), entry.module(), unwritten, why);
    }

    /** The folder into which new lessons of a course are written: the last module's, if its modules are folders. */
    public static Path placeOfNew(Path folder) throws ProblemException {
        boolean folders = Files.exists(folder.resolve(Course.FILE))
                && !CourseSettings.read(folder).listsLessons()
                && ScriptFolder.scripts(folder).isEmpty();
        List<Path> modules = folders ? ScriptFolder.modules(folder) : List.of();
        return modules.isEmpty() ? folder : modules.get(modules.size() - 1);
    }

    /** Whether a file would be a lesson if it lay in a course. */
    public static boolean isScript(Path file) {
        return ScriptFolder.isScript(file);
    }

    /** The name of the lesson that a script is in the course around it; without a course that can be read that of its file. */
    public static String nameOf(Path script) {
        return lessonOf(script).map(Lesson::name).orElseGet(() -> FileNames.stem(script));
    }

    /** The lesson that a script is in the course around it, if that can be read. */
    public static Optional<Lesson> lessonOf(Path script) {
        Optional<Path> around = around(script);
        if (around.isEmpty()) {
            return Optional.empty();
        }
        Path wanted = script.toAbsolutePath().normalize();
        try {
            return readable(around.get()).lessons().stream()
                    .filter(lesson -> lesson.file().toAbsolutePath().normalize().equals(wanted))
                    .findFirst();
        } catch (ProblemException unreadable) {
            // A film or a hand-off must not wait until something else in the course is mended; its pages say what that
            // is.
            return Optional.empty();
        }
    }
}
