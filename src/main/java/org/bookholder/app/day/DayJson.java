package org.bookholder.app.day;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.wording.BreakText;
import org.bookholder.wording.Cautions;

/** A presenter's day as JSON: times of day as ISO 8601, lengths in seconds. */
public final class DayJson {
    private DayJson() {}

    /** The day. */
    public static ObjectNode of(Day day) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("presenter", day.presenter());
        root.put("now", day.now().toString());
        FatigueReport report = day.report();
        root.put("reading", report.reading().toSeconds());
        root.put("on_camera", report.onCamera().toSeconds());
        root.put("since_break", report.sinceBreak().toSeconds());
        root.put("reading_since_break", report.readingSinceBreak().toSeconds());
        root.put("resting", day.resting().toSeconds());
        root.put("pickups", day.pickups());
        ArrayNode sessions = root.putArray("sessions");
        day.sessions().forEach(session -> sessions.add(session(session)));
        ArrayNode rests = root.putArray("rests");
        day.rests()
                .forEach(rest -> rests.addObject()
                        .put("from", rest.from().toString())
                        .put("length", rest.length().toSeconds()));
        ArrayNode advice = root.putArray("advice");
        report.advice().forEach(one -> advice.add(advice(one)));
        report.toNextBreak().ifPresent(left -> root.put("to_next_break", left.toSeconds()));
        ArrayNode cautions = root.putArray("cautions");
        Cautions.lines().forEach(cautions::add);
        ArrayNode unreadable = root.putArray("unreadable");
        day.unreadable().forEach(unreadable::add);
        return root;
    }

    private static ObjectNode session(DaySession session) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("folder", session.folder().toString())
                .put("title", session.title())
                .put("began", session.began().toString())
                .put("ended", session.ended().toString())
                .put("takes", session.takes())
                .put("on_camera", session.onCamera().toSeconds())
                .put("read", session.lines().read())
                .put("skipped", session.lines().skipped())
                .put("not_reached", session.lines().notReached())
                .put("pickups", session.pickups());
    }

    private static ObjectNode advice(BreakAdvice advice) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("reason", advice.reason().name().toLowerCase(Locale.ROOT))
                .put("urgency", advice.urgency().name().toLowerCase(Locale.ROOT))
                .put("left", advice.left().toSeconds())
                .put("text", BreakText.of(advice));
    }
}
