package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.course.CourseJson;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.CoursePlan;
import org.bookholder.app.course.RunningOrder;
import org.bookholder.app.day.Day;
import org.bookholder.app.day.DayForecast;
import org.bookholder.course.CourseModule;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.course.agenda.Agenda;
import org.bookholder.course.agenda.AgendaJson;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardJson;
import org.bookholder.course.board.GateText;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.LaunchList;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.PlannedSession.Slot;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.fatigue.EarlierReading;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLog;
import org.bookholder.fatigue.FatigueReport;

/**
 * What to do today, or on the next day, as the page gets it: the lessons of that day in the order in which they are to be read,
 * the breaks between them, the one thing to do next, and the rest of the course.
 */
final class TodayJson {
    private final CourseOverview course;
    private final Setting setting;
    private final Board board;
    private final Agenda agenda;
    private final Map<Integer, LessonState> byNumber = new LinkedHashMap<>();
    private final ObjectNode json = JsonNodeFactory.instance.objectNode();

    private TodayJson(CourseOverview course, Setting setting) {
        this.course = course;
        this.setting = setting;
        this.board = course.status().board();
        this.agenda = new CoursePlan(course.status(), setting.zone()).agenda(setting.kept());
        board.lessons().forEach(state -> byNumber.put(state.lesson().number(), state));
    }

    /**
     * What else it depends on.
     *
     * @param zone the time zone for times of day
     * @param now the time of day
     * @param day what was read today; empty if unknown
     * @param limits when breaks are advised
     * @param kept the names of today's lessons as someone has put them in order; empty for the plan's order
     * @param moved whether lessons have moved since the plan was shown
     */
    record Setting(
            ZoneId zone,
            Instant now,
            Optional<Day> day,
            FatigueLimits limits,
            Optional<List<String>> kept,
            boolean moved) {}

    static ObjectNode of(CourseOverview course, Setting setting) {
        return new TodayJson(course, setting).json();
    }

    private ObjectNode json() {
        json.put("title", board.course().title());
        json.put("finished", board.finished());
        ArrayNode remarks = json.putArray("remarks");
        board.course().remarks().forEach(remarks::add);
        json.putObject("gate")
                .put("headline", GateText.headline(board))
                .put("standing", GateText.standing(board))
                .put("caution", GateText.caution(board))
                .put("outdated", GateText.OUTDATED);
        BoardJson.facts(json.putArray("due"), board.due());
        ArrayNode lost = json.putArray("lost");
        course.status().lost().ifPresent(change -> change.lost().forEach(day -> lost.add(day.toString())));
        json.put("moved", setting.moved());
        AgendaJson.put(json.putObject("agenda"), agenda);
        BoardJson.facts(json.putArray("lookedAt"), board.lookedAt());
        CourseList launch = course.status().launch();
        ArrayNode missing =
                json.putObject("launch").put("standing", launch.standing()).putArray("missing");
        LaunchList.missing(launch).forEach(missing::add);
        ArrayNode steps = json.putArray("steps");
        LessonSteps.NAMES.forEach(steps::add);
        Optional<PlannedSession> day = RunningOrder.day(course.status());
        heading(day);
        json.put("own", setting.kept().isPresent());
        ArrayNode order = json.putArray("order");
        if (setting.kept().isPresent() || isToday(day)) {
            foretold(order, lessons());
        } else {
            day.ifPresent(session -> order(order, session));
        }
        rest(json.putArray("rest"));
        next(day);
        ArrayNode why = json.putArray("unplanned");
        course.status().plan().why().forEach(why::add);
        return json;
    }

    /** Whether the order is for now: its day is today, or no days are known. */
    private boolean isToday(Optional<PlannedSession> day) {
        return day.isPresent()
                && day.get().date().filter(date -> !date.equals(board.today())).isEmpty();
    }

    /** Today's lessons in the order in which they are to be read. */
    private List<LessonState> lessons() {
        return RunningOrder.of(course.status(), setting.zone(), setting.kept());
    }

    /** The lessons from now on, with a break where the sum reaches the advice, and when each is likely to begin. */
    private void foretold(ArrayNode order, List<LessonState> lessons) {
        List<Duration> lengths = lessons.stream().map(this::camera).toList();
        FatigueReport report = setting.day()
                .map(Day::report)
                .orElseGet(() -> FatigueLog.report(setting.limits(), EarlierReading.NONE, Duration.ZERO));
        DayForecast forecast = DayForecast.of(setting.now(), report, setting.limits(), 1, lengths);
        for (DayForecast.Row row : forecast.rows()) {
            String at = HomeDay.time(row.at(), setting.zone());
            if (row.isBreak()) {
                order.addObject()
                        .put("kind", "break")
                        .put("minutes", row.length().toMinutes())
                        .put("at", at);
            } else {
                LessonState state = lessons.get(row.lesson());
                byNumber.remove(state.lesson().number());
                ObjectNode node = lesson(order.addObject(), state);
                node.put("at", at);
                node.put("camera", row.length().toMinutes());
                node.put("fresh", readToday(state));
            }
        }
        json.put("ends", lessons.isEmpty() ? "" : HomeDay.time(forecast.end(), setting.zone()));
    }

    /** How long the work that is left of a lesson takes before the camera. */
    private Duration camera(LessonState state) {
        return course.status().works().works().stream()
                .filter(work -> work.lesson() == state.lesson().number())
                .map(RecordingTask::length)
                .findFirst()
                .orElse(Duration.ZERO);
    }

    /** Whether the lesson was read today, so that everything may still be set up. */
    private boolean readToday(LessonState state) {
        return course.newest(state.lesson())
                .filter(session -> setting.day().stream()
                        .flatMap(day -> day.sessions().stream())
                        .anyMatch(one -> one.folder()
                                .equals(session.folder().toAbsolutePath().normalize())))
                .isPresent();
    }

    private void heading(Optional<PlannedSession> day) {
        if (setting.kept().isPresent()) {
            List<LessonState> lessons = lessons();
            Duration camera = lessons.stream().map(this::camera).reduce(Duration.ZERO, Duration::plus);
            json.put("day", "today").put("lessons", lessons.size()).put("minutes", camera.toMinutes());
            return;
        }
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
                        .put("module", module(broken.module()))
                        .put("title", broken.fileName())
                        .put("why", broken.why());
            }
        }
    }

    private void next(Optional<PlannedSession> day) {
        Optional<LessonState> first = lessons().stream()
                .filter(state -> !state.recording().complete())
                .findFirst();
        first.or(board::next).ifPresent(state -> {
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

    private static String module(Optional<CourseModule> module) {
        return module.map(CourseModule::heading).orElse("");
    }

    private ObjectNode lesson(ObjectNode row, LessonState state) {
        row.put("kind", "lesson");
        row.put("number", state.lesson().number());
        row.put("name", state.lesson().name());
        row.put("title", state.lesson().title());
        row.put("module", module(state.lesson().module()));
        row.put("seconds", Math.round(state.seconds()));
        row.put("state", state.stage().label());
        row.put("file", state.lesson().file().toString());
        row.put("stage", state.stage().name());
        row.put("todo", state.next());
        row.put("why", agenda.why(state.lesson().name()).orElse(""));
        state.export().ifPresent(film -> row.put("export", film.toString()));
        row.put("found", state.check().filter(check -> !check.passed()).isPresent());
        row.put("pickups", state.recording().pickups().size());
        row.put("unread", state.recording().unread().size());
        row.put("begun", state.recording().begun());
        course.newest(state.lesson()).ifPresent(session -> row.put("session", CourseJson.name(session.folder())));
        ArrayNode missing = row.putArray("missing");
        state.missing().forEach(missing::add);
        ArrayNode way = row.putArray("way");
        LessonSteps.of(state).forEach(part -> way.add(Math.round(part * 100) / 100.0));
        return row;
    }
}
