package org.bookholder.app.handoff;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.files.FileNames;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.script.model.Script;
import org.bookholder.timing.FrameRate;

/**
 * Contents and place of a hand-off.
 *
 * @param out folder for the files; empty for the usual folder in the session, or beside the sessions of a lesson
 * @param parts the kinds of files, in the order in which they are written
 * @param chosen whether the kinds were chosen individually; otherwise those that cannot be written are left out
 * @param rate frame rate; empty for the camera's
 * @param dropFrame whether to use drop-frame timecode; empty to do as the camera does
 * @param useMisread whether a misread attempt fills a line without a clean one
 * @param deliveryWidth width of the delivered picture in pixels; limits the punch-in
 * @param deliveryHeight height of the delivered picture in pixels
 * @param replace whether existing files are replaced
 */
public record HandOffRequest(
        Optional<Path> out,
        List<HandOffPart> parts,
        boolean chosen,
        Optional<FrameRate> rate,
        Optional<Boolean> dropFrame,
        boolean useMisread,
        int deliveryWidth,
        int deliveryHeight,
        boolean replace) {
    private static final int FULL_HD_WIDTH = 1920;
    private static final int FULL_HD_HEIGHT = 1080;

    /** The complete hand-off in the usual folder, at the camera's rate, for a picture of 1920 by 1080. */
    public static HandOffRequest usual(List<HandOffPart> parts, boolean replace) {
        return new HandOffRequest(
                Optional.empty(),
                parts,
                false,
                Optional.empty(),
                Optional.empty(),
                false,
                FULL_HD_WIDTH,
                FULL_HD_HEIGHT,
                replace);
    }

    /** The usual folder of a session's hand-off. */
    public static Path usualFolder(Path session) {
        return session.resolve("handoff");
    }

    /** The lesson's title; in a module its name in the course, as of its film, because lessons of two modules may have one title. */
    static String name(Script script) {
        Path source = Path.of(script.source());
        Optional<Lesson> lesson = Files.exists(source) ? CourseReader.lessonOf(source) : Optional.empty();
        return FileNames.ofTitle(lesson.filter(known -> known.module().isPresent())
                .map(Lesson::name)
                .orElse(script.title()));
    }

    /** The folder for the files of a session. */
    public Path folder(Path session) {
        return out.orElseGet(() -> usualFolder(session));
    }

    /**
     * The folder for the files of a lesson: beside its last session and named like that, as two lessons may have one title, unless
     * another one was chosen.
     */
    Path folder(List<Path> sessions) {
        Path last = sessions.get(sessions.size() - 1).toAbsolutePath().normalize();
        return out.orElseGet(() -> last.resolveSibling(last.getFileName() + "-handoff"));
    }
}
