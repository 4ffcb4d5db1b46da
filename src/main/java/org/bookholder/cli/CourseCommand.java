package org.bookholder.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.app.course.CourseStatus;
import org.bookholder.app.course.EditMarks;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardJson;
import org.bookholder.course.board.BoardText;
import org.bookholder.course.lists.ListText;
import org.bookholder.course.page.CoursePage;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows the state of a course, and takes marks that only people can make. */
@Command(
        name = "course",
        sortOptions = false,
        description = {
            "Show where each lesson of a course stands, what to do next, and what is missing before it can go out.",
            "A course is a folder of scripts; course.yaml in it says more, and exports in it holds the finished files."
        })
final class CourseCommand implements Callable<Integer> {
    private static final Pattern FACT = Pattern.compile("(.+):(\\d{1,6})");

    private final Environment here;
    private final Terminal terminal;

    @Mixin
    private final CourseFolder folder = new CourseFolder();

    @Mixin
    private final PresenterOption presenter = new PresenterOption();

    @ArgGroup(exclusive = true)
    private @Nullable Edit edit;

    @Mixin
    private final ModuleOptions modules = new ModuleOptions();

    @Option(names = "--hours", paramLabel = "H", description = "With --edited: how many hours the edit took.")
    private @Nullable Double hours;

    @Option(names = "--json", description = "The board as JSON, for other programs.")
    private boolean json;

    @Option(
            names = "--page",
            paramLabel = "FILE.html",
            description = "Also write the board, the sessions that are left and how the edit goes as a page.")
    private @Nullable Path page;

    CourseCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    /** At most one of these options. */
    static final class Edit {
        @Option(
                names = "--edited",
                paramLabel = "LESSON",
                description = "Mark a lesson, by its name, title or number, as edited.")
        private @Nullable String done;

        @Option(names = "--not-edited", paramLabel = "LESSON", description = "Take that back.")
        private @Nullable String undone;

        @Option(
                names = "--checked",
                paramLabel = "LESSON:LINE",
                description = "A fact of that line was looked at and is still right.")
        private @Nullable String checked;

        @Option(names = "--not-checked", paramLabel = "LESSON:LINE", description = "Take that back.")
        private @Nullable String unchecked;
    }

    @Override
    public Integer call() throws ProblemException {
        modules.apply(folder.path());
        mark(folder.path());
        lookedAt(folder.path());
        CourseStatus view = CourseStatus.read(folder.path(), new TargetPaces(here, presenter.name()), here);
        terminal.leftOut(view.besideLessons());
        Board board = view.board();
        if (page != null) {
            write(view, page);
        }
        if (json) {
            terminal.out().println(BoardJson.of(board).toPrettyString());
        } else {
            BoardText.of(board).forEach(terminal.out()::println);
            terminal.out().println();
            ListText.gate(view.launch()).forEach(terminal.out()::println);
        }
        return 0;
    }

    private void write(CourseStatus view, Path file) throws ProblemException {
        TextFile.write(file, "the page", CoursePage.of(view.board(), view.plan(), view.burnDown(here.zone())));
    }

    private void lookedAt(Path place) throws ProblemException {
        String right = edit == null ? null : edit.checked;
        String takenBack = edit == null ? null : edit.unchecked;
        String fact = right == null ? takenBack : right;
        if (fact == null) {
            return;
        }
        Matcher parts = FACT.matcher(fact);
        if (!parts.matches()) {
            throw new ProblemException(
                    "this is no line of a lesson",
                    fact,
                    "write the lesson's name or number, a colon and the line, as in 14:3");
        }
        EditMarks marks = new EditMarks(here, place);
        marks.lookedAt(marks.meant(parts.group(1)), Integer.parseInt(parts.group(2)), right != null);
    }

    private void mark(Path place) throws ProblemException {
        String done = edit == null ? null : edit.done;
        String undone = edit == null ? null : edit.undone;
        if (hours != null && (done == null || !(hours > 0 && hours <= EditMarks.MOST_HOURS))) {
            throw new ProblemException(
                    done == null
                            ? "no edit is marked that could have taken them"
                            : "an edit takes no " + hours + " hours",
                    "--hours",
                    "give it with --edited LESSON, and a number from 0.1 to 1000");
        }
        String name = done == null ? undone : done;
        if (name != null) {
            EditMarks marks = new EditMarks(here, place);
            marks.edited(marks.meant(name), done != null, hours == null ? 0 : hours);
        }
    }
}
