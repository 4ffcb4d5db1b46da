package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.files.FileNames;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.settings.Form;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.Setting;
import org.bookholder.settings.SettingsFile;

/**
 * The one rule for the pace at which a script is to be read: the script's own, else the course's, else the presenter's measured one if
 * they took it as their target, else 100 words a minute (common practice). A presenter's is kept by their name.
 */
public final class TargetPaces {
    /** The setting in a presenter's file. */
    public static final String PACE = "pace";

    /** What can be set for a presenter. */
    public static final Form<Optional<Integer>> FORM = new Form<>(
            "setting",
            List.of(new Field<>(
                    PACE,
                    "target where script and course set none, in words a minute; empty for 100 (common practice)",
                    TargetPaces::pace)));

    private final Environment here;
    private final String presenter;

    /** The paces for a presenter, who is told from others by name. */
    public TargetPaces(Environment here, String presenter) {
        this.here = here;
        this.presenter = presenter;
    }

    /** The script of a file with the pace at which this presenter is to read it. */
    public Script aimed(Script script, Path file) {
        if (!isFree(script)) {
            return script;
        }
        OptionalInt course = course(file);
        return course.isPresent()
                ? script.with(script.settings().paced(course.getAsInt(), PaceSource.COURSE))
                : aimed(script, own());
    }

    /** The same for a course, in whose lessons its own pace stands already. */
    public Course aimed(Course course) {
        boolean wanted = course.lessons().stream().anyMatch(lesson -> isFree(lesson.script()));
        OptionalInt own = wanted ? own() : OptionalInt.empty();
        return course.with(course.lessons().stream()
                .map(lesson -> lesson.with(aimed(lesson.script(), own)))
                .toList());
    }

    private static Script aimed(Script script, OptionalInt own) {
        return own.isEmpty() || !isFree(script)
                ? script
                : script.with(script.settings().paced(own.getAsInt(), PaceSource.OWN));
    }

    /** Whether neither the script nor its course sets a pace. */
    private static boolean isFree(Script script) {
        return script.settings().paceSource() == PaceSource.USUAL;
    }

    private OptionalInt course(Path file) {
        Optional<Path> folder = CourseReader.around(file);
        try {
            return folder.isEmpty() ? OptionalInt.empty() : CourseReader.pace(folder.get());
        } catch (ProblemException e) {
            here.warnings().of(e);
            return OptionalInt.empty();
        }
    }

    /** The presenter's own target; empty if they took none. */
    public OptionalInt own() {
        try {
            Optional<Integer> pace = file().read(FORM).values().getOrDefault(PACE, Optional.empty());
            return pace.map(OptionalInt::of).orElseGet(OptionalInt::empty);
        } catch (ProblemException e) {
            here.warnings().of(e);
            return OptionalInt.empty();
        }
    }

    /**
     * Keeps the presenter's own target.
     *
     * @param pace words per minute; empty to drop it
     * @throws ProblemException if it can't be written, or is no pace
     */
    public void keep(String pace) throws ProblemException {
        file().set(FORM, PACE, pace);
    }

    /** Where it is kept. */
    public SettingsFile file() {
        String name = FileNames.ofTitle(presenter) + ".txt";
        return new SettingsFile(here.settings().resolve("presenters").resolve(name), "the presenter's settings");
    }

    private static Optional<Integer> pace(Setting setting) throws ProblemException {
        return setting.text().isEmpty()
                ? Optional.empty()
                : Optional.of(setting.whole(ScriptSettings.MIN_PACE, ScriptSettings.MAX_PACE, "words per minute"));
    }
}
