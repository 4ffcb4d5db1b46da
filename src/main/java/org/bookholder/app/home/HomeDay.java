package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.course.CourseJson;
import org.bookholder.app.day.Day;
import org.bookholder.app.day.DayService;
import org.bookholder.app.day.DaySession;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.wording.BreakText;
import org.bookholder.wording.Cautions;
import org.bookholder.wording.LinesText;

/** The presenter's day as the page shows it. Safe for use by several threads. */
final class HomeDay {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final Environment here;
    private final Latest<Known> known = new Latest<>(new Known(Optional.empty(), ""));

    /** The day; empty, with the reason, if it can't be read. */
    private record Known(Optional<Day> day, String trouble) {}

    HomeDay(Environment here) {
        this.here = here;
    }

    /** Reads the day's sessions; takes a while. */
    void look() {
        try {
            known.set(new Known(Optional.of(new DayService(here, DayService.SOLE_PRESENTER).today()), ""));
        } catch (ProblemException e) {
            known.set(new Known(Optional.empty(), e.getMessage()));
        }
    }

    /** The day as it was last looked at. */
    Optional<Day> day() {
        return known.get().day();
    }

    /** A time of day as the page shows it. */
    static String time(Instant at, ZoneId zone) {
        return TIME.format(at.atZone(zone));
    }

    /** The day for the page: times of day as they are shown, lengths in whole minutes. */
    ObjectNode json() {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("trouble", known.get().trouble());
        ArrayNode cautions = json.putArray("cautions");
        Cautions.lines().forEach(cautions::add);
        ArrayNode sources = json.putArray("sources");
        Cautions.sources().forEach(sources::add);
        day().ifPresent(day -> put(json, day));
        return json;
    }

    private void put(ObjectNode json, Day day) {
        json.put("reading", day.report().reading().toMinutes());
        json.put("camera", day.report().onCamera().toMinutes());
        json.put("pickups", day.pickups());
        if (!day.sessions().isEmpty()) {
            json.put("resting", day.resting().toMinutes());
        }
        ArrayNode advice = json.putArray("advice");
        day.report().warnings().forEach(one -> advice.add(BreakText.of(one)));
        day.report()
                .toNextBreak()
                .filter(left -> !left.isNegative())
                .ifPresent(left -> json.put("next", left.toMinutes()));
        ArrayNode sessions = json.putArray("sessions");
        day.sessions().forEach(session -> sessions.add(session(session)));
        ArrayNode rests = json.putArray("rests");
        day.rests()
                .forEach(rest -> rests.addObject()
                        .put("at", time(rest.from(), here.zone()))
                        .put("minutes", rest.length().toMinutes()));
    }

    private ObjectNode session(DaySession session) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("session", CourseJson.name(session.folder()))
                .put("title", session.title())
                .put("at", time(session.began(), here.zone()))
                .put("until", time(session.ended(), here.zone()))
                .put("takes", session.takes())
                .put("lines", LinesText.of(session.lines()))
                .put("camera", session.onCamera().toMinutes())
                .put("pickups", session.pickups());
    }
}
