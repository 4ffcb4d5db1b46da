package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.course.CalendarFile;
import org.bookholder.app.course.CoursePlan;
import org.bookholder.app.course.CourseStatus;
import org.bookholder.app.course.PlanJson;
import org.bookholder.app.course.ShownPlans;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.Text;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.problem.ProblemException;
import org.bookholder.wording.Cautions;
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
            "Says first what to do today and why, and how much room there is until the launch. Shows breaks, how the edit goes against its plan, and what it costs. Days, hours and costs come from "
                    + "course.yaml."
        })
final class PlanCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Mixin
    private final CourseFolder folder = new CourseFolder();

    @Mixin
    private final PresenterOption presenter = new PresenterOption();

    @Option(
            names = "--calendar",
            paramLabel = "FILE.ics",
            description = "Also write the sessions for a calendar program. Written again, the file moves the "
                    + "sessions that it held, and cancels those no longer planned.")
    private @Nullable Path calendar;

    @Option(names = "--json", description = "The plan as JSON, for other programs.")
    private boolean json;

    PlanCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        CourseStatus status = CourseStatus.read(folder.path(), new TargetPaces(here, presenter.name()), here);
        terminal.leftOut(status.unreadable());
        CoursePlan plan = new CoursePlan(status, here.zone());
        Optional<PlanChange> moved = moved(plan);
        if (json) {
            terminal.out().println(PlanJson.of(plan, Optional.empty(), moved).toPrettyString());
        } else {
            plan.lines(moved).forEach(terminal.out()::println);
            Cautions.brief().forEach(terminal.out()::println);
        }
        if (calendar != null) {
            long sessions = CalendarFile.write(calendar, plan, here.clock().instant());
            (json ? terminal.err() : terminal.out())
                    .println("Calendar: " + calendar + " (" + Text.count(sessions, "session") + ")");
        }
        return 0;
    }

    /** What has moved since the pages or this command showed the plan. What programs ask for is not shown to anybody. */
    private Optional<PlanChange> moved(CoursePlan plan) {
        if (!presenter.name().equals(DayService.SOLE_PRESENTER)) {
            return Optional.empty();
        }
        ShownPlans shown = new ShownPlans(here, folder.path());
        return json ? shown.moved(plan) : shown.show(plan);
    }
}
