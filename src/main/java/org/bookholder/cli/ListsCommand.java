package org.bookholder.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.app.course.CourseLists;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.EditMarks;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.Lesson;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.ListItem;
import org.bookholder.course.lists.ListJson;
import org.bookholder.course.lists.ListKind;
import org.bookholder.course.lists.ListText;
import org.bookholder.course.page.ListPage;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows the lists of a course, and takes down what a person says about them. */
@Command(
        name = "lists",
        sortOptions = false,
        description = {
            "Show what to shoot, what to set up, and what belongs to the launch of a course.",
            "Tick what is done, add your own, write remarks. None of the lists ever stops anything."
        })
final class ListsCommand implements Callable<Integer> {
    private static final Pattern REMARK = Pattern.compile("(\\d{1,5}):(.*)", Pattern.DOTALL);
    private static final Pattern NUMBER = Pattern.compile("\\d{1,5}");

    private final Environment here;
    private final Terminal terminal;

    @Mixin
    private final CourseFolder folder = new CourseFolder();

    @Option(
            names = "--list",
            paramLabel = "LIST",
            description = "Which list: shots, set-up or launch. Default: all of them.")
    private @Nullable String wanted;

    @ArgGroup(exclusive = true)
    private @Nullable Change change;

    @Option(
            names = "--lesson",
            paramLabel = "LESSON",
            description = "With --add: the lesson that it belongs to, by its name, title or number.")
    private @Nullable String lesson;

    @Option(names = "--json", description = "The lists as JSON, for other programs.")
    private boolean json;

    @Option(names = "--page", paramLabel = "FILE.html", description = "Also write them as a page to print.")
    private @Nullable Path page;

    ListsCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    /** At most one of these options. */
    static final class Change {
        @Option(names = "--tick", paramLabel = "N", description = "With --list: tick the item of that number.")
        private @Nullable String ticked;

        @Option(names = "--untick", paramLabel = "N", description = "Take the tick off.")
        private @Nullable String unticked;

        @Option(names = "--add", paramLabel = "TEXT", description = "Add an item of your own.")
        private @Nullable String added;

        @Option(
                names = "--remark",
                paramLabel = "N:TEXT",
                description = "Write a remark about an item; nothing behind the colon takes it away.")
        private @Nullable String remark;

        @Option(
                names = "--leave-out",
                paramLabel = "N|PART",
                description = "Leave an item out, or a whole part, such as Captions.")
        private @Nullable String leftOut;

        @Option(names = "--put-back", paramLabel = "N|PART", description = "Take that back.")
        private @Nullable String putBack;
    }

    @Override
    public Integer call() throws ProblemException {
        if (lesson != null && (change == null || change.added == null)) {
            throw new ProblemException("nothing is added to a lesson", "--lesson", "give it with --add TEXT");
        }
        List<ListKind> kinds = kinds();
        CourseOverview course = CourseOverview.read(folder.path(), here);
        terminal.leftOut(course.status().unreadable());
        CourseLists lists = new CourseLists(here, course);
        if (change != null) {
            if (kinds.size() > 1) {
                throw new ProblemException("it is not said which list is meant", "--list", "give one of " + labels());
            }
            change(change, kinds.get(0), lists, course.status().course());
        }
        List<CourseList> shown = new ArrayList<>();
        for (ListKind kind : kinds) {
            shown.add(lists.list(kind));
        }
        show(course.status().course(), shown, lists);
        return 0;
    }

    private void show(Course course, List<CourseList> shown, CourseLists lists) throws ProblemException {
        if (page != null) {
            TextFile.write(page, "the page", ListPage.of(course.title(), here.today(), shown));
        }
        for (CourseList list : shown) {
            if (json) {
                terminal.out().println(ListJson.of(list).toPrettyString());
                continue;
            }
            ListText.of(list).forEach(terminal.out()::println);
            for (CourseList.Row row : list.shown()) {
                lists.picture(row.item())
                        .ifPresent(still -> terminal.out()
                                .println("Picture of " + row.item().text() + ": " + still));
            }
            terminal.out().println();
        }
    }

    private static String labels() {
        return String.join(", ", ListKind.labels());
    }

    private List<ListKind> kinds() throws ProblemException {
        if (wanted == null) {
            return List.of(ListKind.values());
        }
        List<ListKind> named = Arrays.stream(ListKind.values())
                .filter(kind -> kind.label().equalsIgnoreCase(wanted))
                .toList();
        if (named.isEmpty()) {
            throw new ProblemException("there is no list '" + wanted + "'", "--list", "give one of " + labels());
        }
        return named;
    }

    private void change(Change asked, ListKind kind, CourseLists lists, Course course) throws ProblemException {
        if (asked.ticked != null) {
            lists.tick(kind, item(asked.ticked, kind, lists), true);
        } else if (asked.unticked != null) {
            lists.tick(kind, item(asked.unticked, kind, lists), false);
        } else if (asked.added != null) {
            lists.add(kind, lesson == null ? "" : title(lesson, course), asked.added);
        } else if (asked.remark != null) {
            remark(asked.remark, kind, lists);
        } else {
            String what = asked.leftOut == null ? String.valueOf(asked.putBack) : asked.leftOut;
            leaveOut(what, asked.leftOut != null, kind, lists);
        }
    }

    private static void remark(String text, ListKind kind, CourseLists lists) throws ProblemException {
        Matcher parts = REMARK.matcher(text);
        if (!parts.matches()) {
            throw new ProblemException(
                    "it is not said which item the remark is about", text, "write its number, a colon and the remark");
        }
        lists.remark(kind, item(parts.group(1), kind, lists), parts.group(2));
    }

    private static void leaveOut(String what, boolean out, ListKind kind, CourseLists lists) throws ProblemException {
        if (NUMBER.matcher(what).matches()) {
            lists.leaveOut(kind, item(what, kind, lists), out);
        } else {
            lists.leavePartOut(kind, what, out);
        }
    }

    private static String item(String number, ListKind kind, CourseLists lists) throws ProblemException {
        List<ListItem> items =
                lists.list(kind).rows().stream().map(CourseList.Row::item).toList();
        int wanted = NUMBER.matcher(number).matches() ? Integer.parseInt(number) : 0;
        if (wanted < 1 || wanted > items.size()) {
            throw new ProblemException(
                    "the list has no number " + number,
                    kind.title(),
                    "bookholder lists --list " + kind.label() + " shows the numbers");
        }
        return items.get(wanted - 1).id();
    }

    private String title(String said, Course course) throws ProblemException {
        String name = new EditMarks(here, folder.path()).meant(said);
        return course.lesson(name).map(Lesson::title).orElse(name);
    }
}
