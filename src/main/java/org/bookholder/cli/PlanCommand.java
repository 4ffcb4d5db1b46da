package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.course.Costs;
import org.bookholder.course.Course;
import org.bookholder.course.calendar.SessionCalendar;
import org.bookholder.course.edit.EditTask;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.edit.EditText;
import org.bookholder.course.shoot.PlanText;
import org.bookholder.handoff.AtomicFile;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plans what is left to record and to edit. */
@Command(
        name = "plan",
        sortOptions = false,
        description = {
            "Plan the recording sessions that are left, with breaks, and the edit week by week; show how the edit",
            "goes against its plan, and what it costs. Days, hours and costs stand in course.yaml."
        })
final class PlanCommand implements Callable<Integer> {
    private final Surroundings here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "The course's folder. Default: the one you are in.")
    private @Nullable Path folder;

    @Option(
            names = "--calendar",
            paramLabel = "FILE.ics",
            description = "Also write the sessions for a calendar program.")
    private @Nullable Path calendar;

    PlanCommand(Surroundings here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        CourseView view = CourseView.read(folder == null ? Path.of(".") : folder, here, terminal);
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
            terminal.out().println("These days are for your own use: promise nobody a date before all is checked.");
        }
        if (calendar != null) {
            write(view, calendar);
        }
        return 0;
    }

    private void write(CourseView view, Path file) throws ProblemException {
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
        try {
            new AtomicFile().write(file, out -> out.append(text));
        } catch (IOException e) {
            throw new ProblemException(
                    "the calendar cannot be written", file.toString(), "name a file in a folder that you may write", e);
        }
    }
}
