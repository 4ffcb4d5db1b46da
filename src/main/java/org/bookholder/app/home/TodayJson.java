package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.course.CourseJson;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.RunningOrder;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.PlannedSession.Slot;

/**
 * What to do today, or on the next day, as the page gets it: the lessons of that day in the order in which they are to be read,
 * the breaks between them, the one thing to do next, and the rest of the course.
 */
final class TodayJson {
    private final CourseOverview course;
    private final Board board;
    private final Map<Integer, LessonState> byNumber = new LinkedHashMap<>();
    private final ObjectNode json = JsonNodeFactory.instance.objectNode();

    private TodayJson(CourseOverview course) {
        this.course = course;
        this.board = course.status().board();
        board.lessons().forEach(state -> byNumber.put(state.lesson().number(), state));
    }

    static ObjectNode of(CourseOverview course, ZoneId zone) {
        return new TodayJson(course).json(zone);
    }

    private ObjectNode json(ZoneId zone) {
        json.put("title", board.course().title());
        json.put("finished", board.finished());
        json.put("readMinutes", course.read(board.today(), zone).toMinutes());
        ArrayNode steps = json.putArray("steps");
        LessonSteps.NAMES.forEach(steps::add);
        Optional<PlannedSession> day = RunningOrder.day(course.status());
        heading(day);
        ArrayNode order = json.putArray("order");
        day.ifPresent(session -> order(order, session));
        rest(json.putArray("rest"));
        next(day);
        ArrayNode why = json.putArray("unplanned");
        course.status().plan().why().forEach(why::add);
        return json;
    }

    private void heading(Optional<PlannedSession> day) {
        Optional<LocalDate> date = day.flatMap(PlannedSession::date);
        json.put(
                "day",
                day.isEmpty()
                        ? "none"
                        : date.isEmpty() ? "unset" : date.get().equals(board.today()) ? "today" : "later");
        date.ifPresent(known -> json.put("date", known.toString()));
        day.ifPresent(session -> {
            json.put(
                    "lessons",
                    session.works().stream()
                            .map(work -> work.lesson())
                            .distinct()
                            .count());
            json.put("minutes", session.reading().toMinutes());
        });
    }

    private void order(ArrayNode order, PlannedSession session) {
        int last = 0;
        for (Slot slot : session.slots()) {
            LocalTime at = session.from().plus(slot.start());
            if (slot.use() == PlannedSession.Use.BREAK) {
                order.addObject()
                        .put("kind", "break")
                        .put("minutes", slot.length().toMinutes())
                        .put("at", session.date().isPresent() ? at.toString() : "");
            }
            Optional<LessonState> state = slot.work().flatMap(work -> Optional.ofNullable(byNumber.get(work.lesson())));
            if (state.isPresent() && state.get().lesson().number() != last) {
                last = state.get().lesson().number();
                ObjectNode row = lesson(order.addObject(), state.get());
                row.put("camera", slot.work().orElseThrow().length().toMinutes());
                row.put("part", slot.work().orElseThrow().what());
                byNumber.remove(last);
            }
        }
    }

    private void rest(ArrayNode rest) {
        Map<Integer, UnreadableLesson> unreadable = new LinkedHashMap<>();
        board.course().unreadable().forEach(lesson -> unreadable.put(lesson.number(), lesson));
        int all = board.lessons().size() + unreadable.size();
        for (int number = 1; number <= all; number++) {
            LessonState state = byNumber.get(number);
            UnreadableLesson broken = unreadable.get(number);
            if (state != null) {
                lesson(rest.addObject(), state);
            } else if (broken != null) {
                rest.addObject()
                        .put("kind", "unreadable")
                        .put("number", number)
                        .put("name", broken.name())
                        .put("title", String.valueOf(broken.file().getFileName()))
                        .put("why", broken.why());
            }
        }
    }

    private void next(Optional<PlannedSession> day) {
        Optional<LessonState> planned = day.flatMap(
                        session -> session.works().stream().findFirst())
                .flatMap(work -> board.lessons().stream()
                        .filter(state -> state.lesson().number() == work.lesson())
                        .findFirst());
        planned.or(board::next).ifPresent(state -> {
            ObjectNode next = lesson(json.putObject("next"), state);
            next.put("words", state.lesson().script().spokenWords());
            next.put("ownPace", board.measured().pace().isPresent());
            next.put(
                    "breakAfter",
                    day.filter(session -> breakFollows(session, state.lesson().number()))
                            .isPresent());
        });
    }

    private static boolean breakFollows(PlannedSession session, int lesson) {
        boolean read = false;
        for (Slot slot : session.slots()) {
            boolean own = slot.work().filter(work -> work.lesson() == lesson).isPresent();
            if (read && !own) {
                return slot.use() == PlannedSession.Use.BREAK;
            }
            read |= own;
        }
        return false;
    }

    private ObjectNode lesson(ObjectNode row, LessonState state) {
        row.put("kind", "lesson");
        row.put("number", state.lesson().number());
        row.put("name", state.lesson().name());
        row.put("title", state.lesson().title());
        row.put("seconds", Math.round(state.seconds()));
        row.put("state", state.stage().label());
        row.put("todo", state.next());
        row.put("pickups", state.recording().pickups().size());
        row.put("unread", state.recording().unread().size());
        row.put("begun", state.recording().begun());
        course.newest(state.lesson()).ifPresent(session -> row.put("session", CourseJson.name(session.folder())));
        ArrayNode way = row.putArray("way");
        LessonSteps.of(state).forEach(part -> way.add(Math.round(part * 100) / 100.0));
        return row;
    }
}
