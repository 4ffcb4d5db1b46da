package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.course.CourseStatus;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Costs;
import org.bookholder.course.Course;
import org.bookholder.course.calendar.SessionCalendar;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.edit.EditText;
import org.bookholder.course.shoot.PlanText;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plans what is left to record and to edit. */
@Command(
        name = "plan",
        sortOptions = false,
        description = {
            "Plan the recording sessions that are left, and the edit week by week.",
            "Shows breaks, how the edit goes against its plan, and what it costs. Days, hours and costs come from "
                    + "course.yaml."
        })
final class PlanCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Mixin
    private final CourseFolder folder = new CourseFolder();

    @Option(
            names = "--calendar",
            paramLabel = "FILE.ics",
            description = "Also write the sessions for a calendar program.")
    private @Nullable Path calendar;

    PlanCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        CourseStatus view = CourseStatus.read(folder.path(), here);
        terminal.leftOut(view.unreadable());
        Course course = view.board().course();
        PlanText.of(view.works(), view.plan(), view.terms()).forEach(terminal.out()::println);
        terminal.out().println();
        List<EditTask> tasks = EditTasks.of(view.board(), here.zone());
        EditText.of(tasks, course.editing(), view.board().today()).forEach(terminal.out()::println);
        Optional<Costs> costs = course.costs();
        if (costs.isPresent()) {
            terminal.out().println();
            EditText.costs(costs.get(), tasks).forEach(terminal.out()::println);
        }
        if (!view.board().finished()) {
            course.launch()
                    .ifPresent(hoped -> EditText.launch(
                                    hoped, tasks, course.editing(), view.board().today())
                            .forEach(terminal.out()::println));
            terminal.out().println("Keep these dates to yourself; don't promise one until everything is checked.");
        }
        if (calendar != null) {
            write(view, calendar);
        }
        return 0;
    }

    private void write(CourseStatus view, Path file) throws ProblemException {
        if (view.plan().sessions().stream().noneMatch(session -> session.date().isPresent())) {
            throw new ProblemException(
                    "no session has a day, so there is nothing for a calendar",
                    file.toString(),
                    "write recording: days: into course.yaml");
        }
        String text = SessionCalendar.of(
                view.board().course().title(),
                view.plan(),
                here.zone(),
                here.clock().instant());
        TextFile.write(file, "the calendar", text);
    }
}
