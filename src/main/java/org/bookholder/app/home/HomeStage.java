package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.function.LongSupplier;
import org.bookholder.app.course.CoursePlan;
import org.bookholder.app.course.ShownPlans;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Jobs;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.desk.PartsFeed;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Stage;

/**
 * Looks at what the page shows and tells the pages of changes. While a lesson is read only the reading is looked at, so that
 * nothing else takes time from following it.
 */
final class HomeStage implements Stage {
    private static final long PERIOD_NANOS = 250_000_000L;
    private static final int COURSE_PERIODS = 8;
    private static final int MICROPHONE_PERIODS = 40;

    /** The day's journals are read only as often as its minutes pass; a multiple of the course's periods. */
    private static final int DAY_PERIODS = 240;

    private final Environment here;
    private final HomeCourses courses;
    private final BrokenOff brokenOff;
    private final HomeReading reading;
    private final Jobs jobs;
    private final BeforeReading before;
    private final HomeSettings settings;
    private final HomeRooms rooms;
    private final HomeDay day;
    private final KeptOrders orders;
    private final PartsFeed feed;
    private final IdleTimer idle;
    private final LongSupplier nanoTime;
    private final Latest<Map<String, JsonNode>> looked = new Latest<>(Map.of());
    private long last;

    /** When pages were last told how far a course is looked at; used by one thread at a time, the one that looks. */
    private long told;

    private int periods;
    private boolean read;

    HomeStage(
            Environment here,
            HomeCourses courses,
            BrokenOff brokenOff,
            HomeReading reading,
            Jobs jobs,
            BeforeReading before,
            HomeSettings settings,
            HomeRooms rooms,
            HomeDay day,
            KeptOrders orders,
            PartsFeed feed,
            IdleTimer idle) {
        this.here = here;
        this.courses = courses;
        this.brokenOff = brokenOff;
        this.reading = reading;
        this.jobs = jobs;
        this.before = before;
        this.settings = settings;
        this.rooms = rooms;
        this.day = day;
        this.orders = orders;
        this.feed = feed;
        this.idle = idle;
        this.nanoTime = here.nanoTime();
    }

    @Override
    public String role() {
        return "home";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public void onStart() {
        last = nanoTime.getAsLong();
        told = last;
        courses.whileLooking(this::tellOfLooking);
        // What is known at once is shown at once: hundreds of sessions take seconds.
        look();
        before.look();
        day.look();
        look();
        lookAtCourses();
        look();
    }

    @Override
    public int doWork() {
        long now = nanoTime.getAsLong();
        if (now - last < PERIOD_NANOS) {
            return 0;
        }
        last = now;
        periods++;
        boolean goesOn = reading.standing().goesOn();
        rooms.whileReading(goesOn);
        if (read && !goesOn) {
            day.look();
        }
        read = goesOn;
        boolean watched = feed.listening() > 0;
        if (goesOn || watched || jobs.goOn()) {
            idle.needed();
        }
        if (!goesOn && watched && periods % MICROPHONE_PERIODS == 0) {
            before.look();
        }
        if (!goesOn && watched && periods % COURSE_PERIODS == 0) {
            lookAtCourses();
            if (periods % DAY_PERIODS == 0) {
                day.look();
            }
            return look() ? 1 : 0;
        }
        return tell() ? 1 : 0;
    }

    private void tellOfLooking() {
        long now = nanoTime.getAsLong();
        if (now - told >= PERIOD_NANOS) {
            told = now;
            look();
        }
    }

    private void lookAtCourses() {
        courses.look();
        HomeCourses.Seen seen = courses.seen();
        seen.overview().ifPresent(course -> brokenOff.look(course, courses.kept(seen)));
    }

    /** Takes in what has changed and tells pages; safe for use by several threads. */
    boolean look() {
        HomeCourses.Seen seen = courses.seen();
        looked.set(HomeParts.of(courses, seen, before.known(), settings(), day, today(seen)));
        return tell();
    }

    private boolean tell() {
        Map<String, JsonNode> parts = new HashMap<>(looked.get());
        parts.put("reading", HomeParts.reading(reading.standing()));
        parts.put("jobs", JobsJson.of(jobs.all()));
        parts.put("damaged", brokenOff.damaged());
        parts.putAll(rooms.parts());
        return feed.tell(parts);
    }

    private TodayJson.Setting today(HomeCourses.Seen seen) {
        return new TodayJson.Setting(
                here.zone(),
                here.clock().instant(),
                day.day(),
                limits(),
                orders.of(seen.folder(), here.today()),
                moved(seen));
    }

    /** Whether lessons have moved since the plan was shown. */
    private boolean moved(HomeCourses.Seen seen) {
        return seen.overview()
                .flatMap(course -> new ShownPlans(here, Path.of(seen.folder()))
                        .moved(new CoursePlan(course.status(), here.zone())))
                .filter(change -> !change.moves().isEmpty())
                .isPresent();
    }

    private FatigueLimits limits() {
        try {
            return BreakLimits.of(here);
        } catch (ProblemException e) {
            return FatigueLimits.defaults();
        }
    }

    private JsonNode settings() {
        try {
            return settings.json();
        } catch (ProblemException e) {
            return JsonNodeFactory.instance.objectNode().put("trouble", e.getMessage());
        }
    }
}
