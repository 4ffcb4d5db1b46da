package org.bookholder.app.script;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFile;
import org.bookholder.course.CourseReader;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.Content;
import org.bookholder.files.Disk;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ConvertedDocument;
import org.bookholder.script.source.ScriptReader;

/**
 * Makes a course from documents and texts, or adds lessons to one: first each is looked at, then all are written, or none.
 */
public final class CourseImport {
    private static final int LONGEST_NAME = 80;
    private static final int MOST_LESSONS = 500;

    /** What some system does not allow in the name of a file. */
    private static final Pattern NOT_IN_NAMES = Pattern.compile("[\\\\/:*?\"<>|\\p{Cntrl}]");

    private static final Pattern RESERVED = Pattern.compile("(?i)(?:con|prn|aux|nul|com\\d|lpt\\d)(?:\\..*)?");

    private CourseImport() {}

    /**
     * A lesson to be written.
     *
     * @param name its file's name
     * @param text its text
     */
    public record NewLesson(String name, String text) {}

    /**
     * A document as it would be taken over.
     *
     * @param lesson the text file that it would become
     * @param document what of it is left out, and its tables
     */
    public record Offered(NewLesson lesson, ConvertedDocument document) {}

    /**
     * Looks at a document.
     *
     * @param name its file's name
     * @param columns for its tables, by their numbers from 1, which columns are spoken, from 0; others by their headings
     * @throws ProblemException if it is no text and no document that can be read
     */
    public static Offered look(String name, byte[] bytes, Map<Integer, Set<Integer>> columns) throws ProblemException {
        String plain = plain(name);
        if (!ScriptReader.isDocument(plain) && !plain.toLowerCase(Locale.ROOT).matches(".*\\.(?:md|markdown|txt)")) {
            throw new ProblemException(
                    "this kind of file can't be read as a lesson",
                    name,
                    "give a .md, .txt, .docx, .odt, .rtf, .html or .pdf file; a word processor can save others as"
                            + " .docx");
        }
        ConvertedDocument document = ScriptReader.convert(bytes, plain, columns);
        String file = ScriptReader.isDocument(plain) ? plain.substring(0, plain.lastIndexOf('.')) + ".md" : plain;
        return new Offered(new NewLesson(file, LessonText.even(document.text())), document);
    }

    /** A file's name without the folders before it and without what some system does not allow. */
    private static String plain(String name) {
        String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        String plain = NOT_IN_NAMES.matcher(last).replaceAll(" ").strip();
        while (plain.startsWith(".") || plain.startsWith("~")) {
            plain = plain.substring(1);
        }
        return plain;
    }

    /**
     * Writes a course into a new folder.
     *
     * @param place the folder in which the course's folder is made
     * @param name the name of the course's folder
     * @param title the course's title; empty for that of its folder
     * @return the course's folder
     * @throws ProblemException if it can't be made, or could not be read as a course; nothing is left of it then
     */
    public static Path create(Path place, String name, String title, List<NewLesson> lessons) throws ProblemException {
        String plain = folderName(name);
        checked(lessons, place.resolve(plain));
        Path folder = resolve(place, plain);
        if (Files.exists(folder)) {
            throw new ProblemException("a folder of this name is there already", plain, "give another name");
        }
        Path draft = resolve(place, "." + plain + ".part");
        try {
            remove(draft);
            Files.createDirectory(draft);
            new AtomicFiles(Access.SYSTEM_DEFAULT).writeAll(contents(draft, title, lessons));
            CourseReader.readable(draft);
            new Disk().move(draft, folder);
            return folder;
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        } catch (ProblemException e) {
            throw new ProblemException(e.what().replace(draft.toString(), folder.toString()), plain, e.remedy(), e);
        } finally {
            remove(draft);
        }
    }

    /**
     * Writes further lessons into a course's folder, and into the list of its lessons if its file has one.
     *
     * @throws ProblemException if one of them can't be written, or the course could not be read with them; nothing has changed then
     */
    public static void add(Path course, List<NewLesson> lessons) throws ProblemException {
        checked(lessons, course);
        Map<Path, Content> files = contents(CourseReader.placeOfNew(course), "", lessons);
        for (Path file : files.keySet()) {
            if (Files.exists(file)) {
                throw new ProblemException(
                        "a file of this name is in the course already",
                        String.valueOf(file.getFileName()),
                        "give the lesson another name");
            }
        }
        Path yaml = course.resolve(Course.FILE);
        try {
            Optional<byte[]> before = Files.exists(yaml) ? Optional.of(Files.readAllBytes(yaml)) : Optional.empty();
            try {
                new AtomicFiles(Access.SYSTEM_DEFAULT).writeAll(files);
                new CourseFile(course)
                        .addLessons(lessons.stream().map(NewLesson::name).toList());
                CourseReader.readable(course);
            } catch (ProblemException e) {
                takeBack(files.keySet(), yaml, before);
                throw e;
            }
        } catch (IOException e) {
            throw DiskProblems.writing(course, e);
        }
    }

    private static void takeBack(Set<Path> files, Path yaml, Optional<byte[]> before)
            throws IOException, ProblemException {
        for (Path file : files) {
            Files.deleteIfExists(file);
        }
        if (before.isPresent()) {
            new AtomicFiles(Access.KEPT).writeAll(Map.of(yaml, out -> out.write(before.get())));
        }
    }

    private static Map<Path, Content> contents(Path folder, String title, List<NewLesson> lessons) {
        Map<Path, Content> files = new LinkedHashMap<>();
        for (NewLesson lesson : lessons) {
            byte[] bytes = LessonText.even(lesson.text()).getBytes(StandardCharsets.UTF_8);
            files.put(folder.resolve(lesson.name()), out -> out.write(bytes));
        }
        if (!title.isBlank()) {
            String even = title.strip().replaceAll("\\p{Cntrl}+", " ");
            byte[] bytes = ("title: \"" + even.replace("\\", "\\\\").replace("\"", "\\\"") + "\"\n")
                    .getBytes(StandardCharsets.UTF_8);
            files.put(folder.resolve(Course.FILE), out -> out.write(bytes));
        }
        return files;
    }

    private static void checked(List<NewLesson> lessons, Path folder) throws ProblemException {
        if (lessons.isEmpty()) {
            throw new ProblemException("there is no lesson yet", folder.toString(), "add a document or a text");
        }
        if (lessons.size() > MOST_LESSONS) {
            throw new ProblemException("these are too many lessons (over 500)", folder.toString(), "make two courses");
        }
        Set<String> names = new HashSet<>();
        for (NewLesson lesson : lessons) {
            String name = lesson.name();
            boolean good = name.equals(plain(name))
                    && name.length() <= LONGEST_NAME
                    && !RESERVED.matcher(name).matches()
                    && name.toLowerCase(Locale.ROOT).matches(".+\\.(?:md|markdown|txt)");
            if (!good) {
                throw new ProblemException(
                        "this is no name for a lesson's file", name, "give a short one that ends in .md or .txt");
            }
            if (!names.add(name.toLowerCase(Locale.ROOT))) {
                throw new ProblemException("two lessons have this file name", name, "give one of them another name");
            }
        }
    }

    private static String folderName(String name) throws ProblemException {
        String plain = name.strip();
        if (plain.isEmpty()
                || !plain.equals(plain(plain))
                || plain.endsWith(".")
                || plain.length() > LONGEST_NAME
                || RESERVED.matcher(plain).matches()) {
            throw new ProblemException(
                    plain.isEmpty() ? "the course has no name yet" : "this is no name for a folder",
                    plain,
                    "give a short one without / \\ : * ? \" < > |");
        }
        return plain;
    }

    private static Path resolve(Path place, String name) throws ProblemException {
        try {
            return place.resolve(name);
        } catch (InvalidPathException e) {
            throw new ProblemException("this is no name for a folder", name, "use letters and digits", e);
        }
    }

    private static void remove(Path draft) throws ProblemException {
        if (!Files.isDirectory(draft)) {
            return;
        }
        try (Stream<Path> inside = Files.walk(draft)) {
            List<Path> all = new ArrayList<>(inside.toList());
            all.sort(Comparator.reverseOrder());
            for (Path file : all) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw DiskProblems.writing(draft, e);
        }
    }
}
