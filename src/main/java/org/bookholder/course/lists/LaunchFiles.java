package org.bookholder.course.lists;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.bookholder.course.Course;
import org.bookholder.course.ExportFiles;
import org.bookholder.course.Lesson;
import org.bookholder.files.FileNames;
import org.bookholder.problem.ProblemException;

/** The files beside the films of a course that belong to a launch, found by their names. */
final class LaunchFiles {
    private static final String OF_COURSE = "course";

    private final Course course;
    private final List<Path> files;

    private LaunchFiles(Course course, List<Path> files) {
        this.course = course;
        this.files = files;
    }

    /** The kinds of files that are looked for. */
    enum Kind {
        /** Captions for people who can't hear it. */
        CAPTIONS(".*\\.(?:vtt|srt)"),
        /** The picture by which it is offered. */
        PICTURE(".*\\.(?:png|jpe?g|webp)"),
        /** What it is about, in words. */
        DESCRIPTION(".*description.*\\.(?:txt|md|docx|odt|rtf)"),
        /** What learners get to download. */
        RESOURCE(".*\\.(?:pdf|zip|xlsx|ods|csv|docx|odt|pptx|odp)");

        private final Pattern names;

        Kind(String names) {
            this.names = Pattern.compile(names);
        }

        private boolean names(Path file) {
            String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
            boolean other = this == RESOURCE && DESCRIPTION.names.matcher(name).matches();
            return names.matcher(name).matches() && !other;
        }
    }

    /** The files in a course's folder of exports, and in the folder of captions there. */
    static LaunchFiles of(Course course) throws ProblemException {
        List<Path> files = new ArrayList<>(ExportFiles.in(course.exports(), file -> true));
        files.addAll(ExportFiles.in(course.exports().resolve("captions"), file -> true));
        return new LaunchFiles(course, files);
    }

    /** A lesson's files of a kind. */
    List<Path> of(Lesson lesson, Kind kind) {
        return files.stream()
                .filter(kind::names)
                .filter(file -> course.lessonOf(file).equals(Optional.of(lesson)))
                .toList();
    }

    /** The files of a kind that belong to the course as a whole: their names begin with "course". */
    List<Path> ofCourse(Kind kind) {
        return files.stream()
                .filter(kind::names)
                .filter(file -> course.lessonOf(file).isEmpty())
                .filter(file -> FileNames.stem(file).toLowerCase(Locale.ROOT).startsWith(OF_COURSE))
                .toList();
    }
}
