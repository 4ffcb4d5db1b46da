package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionPictures;
import org.bookholder.course.Lesson;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.LaunchList;
import org.bookholder.course.lists.ListItem;
import org.bookholder.course.lists.ListKind;
import org.bookholder.course.lists.ListMarks;
import org.bookholder.course.lists.SetUpList;
import org.bookholder.course.lists.ShotList;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;

/** The lists of a course: shows them and takes down what a person says about them. Used by one thread at a time. */
public final class CourseLists {
    private final Environment here;
    private final CourseOverview course;

    /** The lists of a course as it was seen. */
    public CourseLists(Environment here, CourseOverview course) {
        this.here = here;
        this.course = course;
    }

    /**
     * A list as it stands now.
     *
     * @throws ProblemException if a file that it depends on cannot be read
     */
    public CourseList list(ListKind kind) throws ProblemException {
        List<ListItem> found = switch (kind) {
            case SHOTS -> ShotList.of(course.status().board(), CourseLists::speakers);
            case SET_UP ->
                SetUpList.of(
                        course.status().board(), RunningOrder.day(course.status()), course.sessions(), here.zone());
            case LAUNCH -> LaunchList.of(course.status().board());
        };
        return CourseList.of(kind, found, course.status().course().lessons(), marks(), here.today(), here.zone());
    }

    /** The names of those who speak in a lesson, in lower case. */
    private static Set<String> speakers(Lesson lesson) {
        try {
            String source = lesson.file().toString();
            return ScriptReader.explain(ScriptReader.text(lesson.file()), source, Format.of(source)).speakers().stream()
                    .map(Speaker::name)
                    .map(name -> name.toLowerCase(Locale.ROOT))
                    .collect(Collectors.toSet());
        } catch (ProblemException changedSince) {
            return Set.of();
        }
    }

    /** Ticks an item, or takes the tick off. */
    public void tick(ListKind kind, String item, boolean done) throws ProblemException {
        known(kind, item);
        write(marks().ticked(kind, item, done, here.clock().instant()));
    }

    /** Leaves an item out of its list, or puts it back. */
    public void leaveOut(ListKind kind, String item, boolean out) throws ProblemException {
        known(kind, item);
        write(marks().leftOut(kind, item, out, here.clock().instant()));
    }

    /** Leaves all items of a part out of a list, or puts them back. */
    public void leavePartOut(ListKind kind, String part, boolean out) throws ProblemException {
        CourseList list = list(kind);
        String name = list.parts().stream()
                .map(CourseList.Part::name)
                .filter(known -> known.equalsIgnoreCase(part))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        "the list has no part '" + part + "'",
                        kind.title(),
                        list.parts().isEmpty()
                                ? "leave out its items one by one"
                                : "name one of "
                                        + list.parts().stream()
                                                .map(CourseList.Part::name)
                                                .collect(Collectors.joining(", "))));
        write(marks().partLeftOut(kind, name, out, here.clock().instant()));
    }

    /** Writes a remark about an item; an empty one takes it away. */
    public void remark(ListKind kind, String item, String remark) throws ProblemException {
        known(kind, item);
        write(marks().remarked(kind, item, remark, here.clock().instant()));
    }

    /**
     * Adds an item of one's own.
     *
     * @param lesson the title of its lesson, or empty
     */
    public void add(ListKind kind, String lesson, String text) throws ProblemException {
        write(marks().added(kind, lesson, text, here.clock().instant()));
    }

    /**
     * A picture of how an item looked in its session, made if need be. Takes up to some seconds.
     *
     * @return empty if it stands for no session, or no camera's file of it is there
     * @throws ProblemException if the picture cannot be made
     */
    public Optional<Path> picture(ListItem item) throws ProblemException {
        return item.session().isEmpty()
                ? Optional.empty()
                : SessionPictures.still(item.session().get());
    }

    private void known(ListKind kind, String item) throws ProblemException {
        if (list(kind).row(item).isEmpty()) {
            throw new ProblemException("this is not on the list any more", kind.title(), "look again");
        }
    }

    private ListMarks marks() throws ProblemException {
        return ListMarks.read(course.status().course().folder());
    }

    private void write(ListMarks marks) throws ProblemException {
        marks.write(course.status().course().folder());
    }
}
