package org.bookholder.course;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.YamlEdit;

/**
 * Changes the modules in a course's file; comments and all else in it stay. A course whose lessons are only found in its folder has them
 * written down first, because a list must be there to put them in order.
 *
 * @param file the course's file
 */
public record ModuleEdit(CourseFile file) {
    private static final int LONGEST_TITLE = 120;
    private static final String TITLE = "title";

    /** Adds a module without lessons behind the others. */
    public void add(String title) throws ProblemException {
        YamlEdit yaml = listed();
        String plain = checked(yaml, title, -1);
        write(yaml.withLine(
                ListedLessons.MODULES, ListedLessons.modules(yaml), TITLE + ": " + YamlEdit.written(plain)));
    }

    /** Gives a module, counted from 1, another title. */
    public void rename(int module, String title) throws ProblemException {
        YamlEdit yaml = listed();
        int index = index(yaml, module);
        write(yaml.withValueOfItem(ListedLessons.MODULES, index, TITLE, checked(yaml, title, index)));
    }

    /** Takes away a module that has no lessons. */
    public void remove(int module) throws ProblemException {
        YamlEdit yaml = listed();
        int index = index(yaml, module);
        if (!yaml.items(ListedLessons.list(module)).isEmpty()) {
            throw new ProblemException("this module has lessons", title(yaml, index), "move them first");
        }
        boolean only = ListedLessons.modules(yaml) == 1;
        write(only ? yaml.without(ListedLessons.MODULES) : yaml.withoutItem(ListedLessons.MODULES, index));
    }

    /**
     * Moves a lesson into a module, or to another place in its own.
     *
     * @param script the lesson's script, as it is written in the file
     * @param module the module, counted from 1; 0 for none
     * @param place the place that it has there afterwards, from 0; the last one if that is larger
     */
    public void move(String script, int module, int place) throws ProblemException {
        YamlEdit yaml = listed();
        if (module != 0) {
            index(yaml, module);
        }
        ListedLessons.Place now = ListedLessons.place(yaml, script)
                .orElseThrow(() -> new ProblemException("the course has no such lesson", script, "look again"));
        List<String> to = ListedLessons.list(module);
        int others = yaml.items(to).size() - (to.equals(now.list()) ? 1 : 0);
        int wanted = Math.max(0, Math.min(place, others));
        if (!to.equals(now.list()) || wanted != now.index()) {
            write(yaml.moved(now.list(), now.index(), to, wanted));
        }
    }

    private static String checked(YamlEdit yaml, String title, int own) throws ProblemException {
        String plain = title.strip().replaceAll("[\\p{Cntrl}\\s]+", " ");
        if (plain.isEmpty() || plain.length() > LONGEST_TITLE) {
            throw new ProblemException(
                    plain.isEmpty() ? "the module has no title yet" : "this title is too long",
                    plain,
                    "give a short one");
        }
        for (int i = 0; i < ListedLessons.modules(yaml); i++) {
            if (i != own && title(yaml, i).equalsIgnoreCase(plain)) {
                throw new ProblemException("another module has this title", plain, "give it another one");
            }
        }
        return plain;
    }

    private static String title(YamlEdit yaml, int index) {
        return yaml.valueOfItem(ListedLessons.MODULES, index, TITLE).orElse("");
    }

    private static int index(YamlEdit yaml, int module) throws ProblemException {
        if (module < 1 || module > ListedLessons.modules(yaml)) {
            throw new ProblemException("the course has no module " + module, Course.FILE, "look again");
        }
        return module - 1;
    }

    private void write(String text) throws ProblemException {
        file.write(text);
    }

    /** The file with its lessons in lists. */
    private YamlEdit listed() throws ProblemException {
        YamlEdit yaml = file.read();
        if (ListedLessons.lists(yaml)) {
            return yaml;
        }
        Course course = CourseReader.readable(file.folder());
        YamlEdit longer = with(yaml, 0, items(course, Optional.empty()));
        for (CourseModule module : course.modules()) {
            longer = longer.becomes(longer.withLine(
                    ListedLessons.MODULES, module.number() - 1, TITLE + ": " + YamlEdit.written(module.title())));
            longer = with(longer, module.number(), items(course, Optional.of(module)));
        }
        // From now on what kind a lesson is stands beside it.
        return longer.becomes(longer.without(List.of("kinds")));
    }

    private static YamlEdit with(YamlEdit yaml, int module, List<String> items) throws ProblemException {
        List<String> list = ListedLessons.list(module);
        YamlEdit longer = yaml;
        for (int i = 0; i < items.size(); i++) {
            longer = longer.becomes(longer.withLine(list, i, items.get(i)));
        }
        return longer;
    }

    /** The lessons in order as items of a list, also those that can't be read yet. */
    private static List<String> items(Course course, Optional<CourseModule> module) {
        record Numbered(int number, String item) {}
        List<Lesson> lessons = course.in(module);
        List<String> written = ListedLessons.items(lessons, course);
        List<Numbered> items = new ArrayList<>();
        for (int i = 0; i < lessons.size(); i++) {
            items.add(new Numbered(lessons.get(i).number(), written.get(i)));
        }
        Stream<Numbered> unreadable = course.unreadable().stream()
                .filter(lesson -> lesson.module().equals(module))
                .map(lesson -> new Numbered(
                        lesson.number(), YamlEdit.written(LessonNames.written(course.folder(), lesson.file()))));
        return Stream.concat(items.stream(), unreadable)
                .sorted(Comparator.comparingInt(Numbered::number))
                .map(Numbered::item)
                .toList();
    }
}
