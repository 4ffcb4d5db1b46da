package org.bookholder.course.lists;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.course.Course;
import org.bookholder.course.ExportFiles;
import org.bookholder.course.Lesson;
import org.bookholder.course.Text;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonStage;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.lists.LaunchFiles.Kind;
import org.bookholder.course.lists.ListItem.Finding;
import org.bookholder.problem.ProblemException;

/**
 * Finds what belongs to the launch of a course: titles, descriptions, captions, pictures, files to download, and films that are checked.
 * What has a file is looked for in the folder of exports, by its name.
 */
public final class LaunchList {
    private static final String COURSE = "The course";
    private static final String TITLES = "Titles";
    private static final String DESCRIPTIONS = "Descriptions";
    private static final String CAPTIONS = "Captions";
    private static final String PICTURES = "Pictures";
    private static final String RESOURCES = "Resources";
    private static final String FILMS = "Films checked";

    private final Board board;
    private final LaunchFiles files;
    private final ItemIds ids = new ItemIds();
    private final List<ListItem> items = new ArrayList<>();

    private LaunchList(Board board, LaunchFiles files) {
        this.board = board;
        this.files = files;
    }

    /**
     * What belongs to the launch of a course, first of the course as a whole, then lesson by lesson.
     *
     * @throws ProblemException if the exports cannot be read
     */
    public static List<ListItem> of(Board board) throws ProblemException {
        LaunchList list = new LaunchList(board, LaunchFiles.of(board.course()));
        list.course();
        for (LessonState state : board.lessons()) {
            list.lesson(state);
        }
        return list.items;
    }

    private void course() {
        Course course = board.course();
        boolean named = !course.title()
                .equals(String.valueOf(
                        course.folder().toAbsolutePath().normalize().getFileName()));
        add(
                TITLES,
                "Title of the course: " + course.title(),
                named ? "from " + Course.FILE : "only the folder's name; write title: into " + Course.FILE,
                named);
        found(DESCRIPTIONS, "Description of the course", files.ofCourse(Kind.DESCRIPTION), "course-description.md");
        found(PICTURES, "Picture of the course", files.ofCourse(Kind.PICTURE), "course.jpg");
        List<Path> resources = new ArrayList<>(files.ofCourse(Kind.RESOURCE));
        board.lessons().forEach(state -> resources.addAll(files.of(state.lesson(), Kind.RESOURCE)));
        items.add(new ListItem(
                ids.of(RESOURCES),
                0,
                COURSE,
                RESOURCES,
                "Files that learners download",
                resources.isEmpty() ? "none lie in exports; tick this if there are none to be" : names(resources),
                resources.isEmpty() ? Finding.UNKNOWN : Finding.THERE));
    }

    private void add(String part, String text, String detail, boolean there) {
        items.add(new ListItem(
                ids.of(part + ": the course"), 0, COURSE, part, text, detail, there ? Finding.THERE : Finding.MISSING));
    }

    private void found(String part, String text, List<Path> found, String wanted) {
        add(part, text, found.isEmpty() ? "no " + wanted + " lies in exports" : names(found), !found.isEmpty());
    }

    private void lesson(LessonState state) throws ProblemException {
        Lesson lesson = state.lesson();
        title(lesson);
        file(lesson, DESCRIPTIONS, "Description", Kind.DESCRIPTION, "-description.md");
        captions(state);
        file(lesson, PICTURES, "Picture", Kind.PICTURE, ".jpg");
        boolean checked = state.stage() == LessonStage.CHECKED;
        item(lesson, FILMS, "Film", checked ? "checked, and it can go out" : "to do: " + state.next(), checked);
    }

    private void title(Lesson lesson) {
        boolean own = lesson.isTitled();
        boolean twice = board.lessons().stream()
                .anyMatch(other -> other.lesson().number() != lesson.number()
                        && other.lesson().module().equals(lesson.module())
                        && other.lesson().title().equalsIgnoreCase(lesson.title()));
        item(
                lesson,
                TITLES,
                "Title: " + lesson.title(),
                twice
                        ? "another lesson has the same title"
                        : own ? "from its script" : "only the file's name; write title: into the script",
                own && !twice);
    }

    private void file(Lesson lesson, String part, String text, Kind kind, String ending) {
        List<Path> found = files.of(lesson, kind);
        item(
                lesson,
                part,
                text,
                found.isEmpty() ? "no " + lesson.name() + ending + " lies in exports" : names(found),
                !found.isEmpty());
    }

    /** Captions that are older than the last recording are those of an earlier film. */
    private void captions(LessonState state) throws ProblemException {
        List<Path> found = files.of(state.lesson(), Kind.CAPTIONS);
        Optional<Instant> last = state.recording().last();
        boolean fresh = false;
        for (Path file : found) {
            fresh |= last.isEmpty() || !ExportFiles.made(file).isBefore(last.get());
        }
        String detail = found.isEmpty()
                ? "no " + state.lesson().name() + ".vtt or .srt lies in exports"
                : fresh ? names(found) : names(found) + ": older than the last recording";
        item(state.lesson(), CAPTIONS, "Captions", detail, fresh);
    }

    private void item(Lesson lesson, String part, String text, String detail, boolean there) {
        items.add(new ListItem(
                ids.of(part + ": " + lesson.title()),
                lesson.number(),
                lesson.title(),
                part,
                text,
                detail,
                there ? Finding.THERE : Finding.MISSING));
    }

    private static String names(List<Path> files) {
        return files.stream().map(file -> String.valueOf(file.getFileName())).collect(Collectors.joining(", "));
    }

    /** What is open of a launch list, one line for each part, with how many lessons that concerns; items of one's own each by itself. */
    public static List<String> missing(CourseList list) {
        List<String> missing = new ArrayList<>();
        for (CourseList.Part part : list.parts()) {
            List<CourseList.Row> open = list.open().stream()
                    .filter(row -> row.item().part().equals(part.name()))
                    .toList();
            if (!open.isEmpty()) {
                missing.add(part.name() + ": " + whose(open));
            }
        }
        list.open().stream()
                .filter(CourseList.Row::own)
                .forEach(row -> missing.add(row.item().text()));
        return missing;
    }

    private static String whose(List<CourseList.Row> open) {
        List<String> whose = new ArrayList<>();
        if (open.stream().anyMatch(row -> row.item().number() == 0)) {
            whose.add("the course");
        }
        List<Integer> lessons = open.stream()
                .map(row -> row.item().number())
                .filter(number -> number > 0)
                .toList();
        if (!lessons.isEmpty()) {
            whose.add((lessons.size() == 1 ? "lesson " : "lessons ") + String.join(", ", Text.ranges(lessons)));
        }
        return String.join(", ", whose);
    }
}
