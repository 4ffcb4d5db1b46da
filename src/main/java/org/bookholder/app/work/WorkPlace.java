package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.jobs.HeldEquipment;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult.Link;
import org.bookholder.app.session.Overflows;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * Where jobs do their work.
 *
 * @param here the machine
 * @param address the address of a session's page; empty if no course shows it
 * @param letGo closes a session that is only looked at, so that it can be changed
 */
record WorkPlace(Environment here, Function<Path, Optional<String>> address, Consumer<Path> letGo) {
    /** The machine for a job: its ears wait while the job is held. */
    Environment held(JobControl control) {
        return here.with(new HeldEquipment(here.equipment(), control::hold));
    }

    /** The link to a session's page, if there is one. */
    List<Link> link(Path session, String title) {
        return address.apply(session).map(page -> new Link(title, page, Link.Kind.PAGE)).stream()
                .toList();
    }

    /** Takes in what was kept in a second place; says whether nothing is left there. */
    private boolean takeIn(Path session, JobControl control) {
        try {
            if (!Overflows.of(here, session).isEmpty()) {
                letGo.accept(session);
                Overflows.takeIn(here, session).forEach(control::say);
            }
            return true;
        } catch (ProblemException e) {
            control.say(e.getMessage());
            return false;
        }
    }

    /** Follows again what was broken off, as the commands do before they use a session; says whether nothing is left to follow. */
    boolean settle(Path session, JobControl control) throws ProblemException {
        if (!takeIn(session, control)) {
            return false;
        }
        List<Integer> takes = SessionSettler.unsettled(here, session);
        if (takes.isEmpty()) {
            return settled(session);
        }
        letGo.accept(session);
        control.say(SessionSettler.announcement(takes));
        ProgressMeter meter = new ProgressMeter(here.nanoTime(), control::reached);
        try {
            List<String> troubles = SessionSettler.settle(held(control), session, (take, heard, length) -> {
                control.stop().check();
                meter.reached("listening again to take " + take, heard.seconds() / Math.max(length.seconds(), 1));
            });
            troubles.forEach(control::say);
            return settled(session);
        } catch (ProblemException e) {
            control.say(SessionSettler.failure(e));
            return false;
        }
    }

    /** Also of a session that is open elsewhere. */
    private static boolean settled(Path session) throws ProblemException {
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            return SessionSettler.unsettled(folder).isEmpty();
        }
    }
}
