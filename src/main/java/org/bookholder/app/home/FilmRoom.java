package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.course.CourseJson;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.film.FilmBoard;
import org.bookholder.app.film.FilmBoardJson;
import org.bookholder.app.film.FilmDecisions;
import org.bookholder.app.film.FilmRequest;
import org.bookholder.desk.ServedSession;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.Act;
import org.bookholder.session.Decision;
import org.bookholder.session.FilmChange;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.ActText;

/**
 * The film of a lesson on the page: what becomes of each line, and decisions about it, which go into the sessions' journals. Safe
 * for several threads.
 */
final class FilmRoom {
    private static final long PATIENCE_MILLIS = 10_000;

    /** Seconds by which a pause must change, less than a frame. */
    private static final double LEAST_CHANGE = 0.02;

    private final Environment here;
    private final HomeCourses courses;
    private final AllowedPaths paths;

    /** The sessions of what was decided here, the last one first. */
    private final Deque<Path> decided = new ArrayDeque<>();

    /** The last session of each film that was shown. Looking for it anew means reading all sessions of the course. */
    private final Map<Path, Path> lasts = new HashMap<>();

    FilmRoom(Environment here, HomeCourses courses, AllowedPaths paths) {
        this.here = here;
        this.courses = courses;
        this.paths = paths;
    }

    /**
     * Answers what the page asks: always with the film as it is then.
     *
     * @throws ProblemException why it can't be done
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        Path place = paths.path(asked.path("place").asText());
        String what = asked.path("do").asText();
        if (what.equals("beginning")) {
            return Optional.ofNullable(lasts.get(place))
                    .map(last -> FilmBoardJson.beginning(last, !last.equals(place), this::address))
                    .orElseGet(JsonNodeFactory.instance::objectNode);
        }
        FilmBoard before = board(place, asked);
        lasts.put(place, before.last());
        if (what.equals("show")) {
            return shown(before);
        }
        if (what.equals("undo")) {
            undo(before);
        } else {
            decide(what, asked, before);
        }
        FilmBoard after = board(place, asked);
        if (what.equals("pause") && changesNothing(asked, before, after)) {
            undo(after);
            return shown(before);
        }
        return shown(after);
    }

    /** Whether the film is as it was, as there is no more quiet for a longer pause or none left to take away. */
    private static boolean changesNothing(JsonNode asked, FilmBoard before, FilmBoard after) {
        int index = asked.path("line").asInt() - 1;
        Optional<StreamTime> was = before.lines().get(index).used().flatMap(FilmBoard.Used::pause);
        Optional<StreamTime> is = after.lines().get(index).used().flatMap(FilmBoard.Used::pause);
        return was.isPresent()
                && is.isPresent()
                && Math.abs(is.get().seconds() - was.get().seconds()) < LEAST_CHANGE;
    }

    private FilmBoard board(Path place, JsonNode asked) throws ProblemException {
        return FilmBoard.of(
                here,
                new FilmRequest(
                        place,
                        Optional.empty(),
                        true,
                        Set.of(),
                        !asked.path("asShot").asBoolean(false),
                        false,
                        Optional.empty(),
                        false,
                        false,
                        new FilmPlanner.Wishes(
                                asked.path("title").asBoolean(false),
                                asked.path("cameras").asBoolean(false))));
    }

    private ObjectNode shown(FilmBoard board) {
        ObjectNode json = FilmBoardJson.of(board, this::address);
        undoable(board).ifPresent(last -> json.put("undo", ActText.of(last.act())));
        return json;
    }

    private String address(Path session) {
        return courses.address(session).orElse("");
    }

    private void decide(String what, JsonNode asked, FilmBoard board) throws ProblemException {
        int number = asked.path("line").asInt();
        if (number < 1 || number > board.lines().size()) {
            throw new ProblemException("there is no such line", "the film", "load the page again");
        }
        FilmBoard.Line line = board.lines().get(number - 1);
        if (line.session() < 0) {
            throw new ProblemException(
                    "this line is new since the lesson was read",
                    "line " + number,
                    "read it, or take it out of the script");
        }
        FilmBoard.Source source = board.sessions().get(line.session());
        Remark remark = what.equals("leave") && line.out()
                ? putBack(source.state(), line.own())
                : remark(what, asked, line, board);
        write(source.folder(), remark);
        decided.push(source.folder());
    }

    private Remark remark(String what, JsonNode asked, FilmBoard.Line line, FilmBoard board) throws ProblemException {
        return switch (what) {
            case "leave" -> new Remark.Decided(line.own(), Decision.Choice.LEAVE_OUT, 0, 0);
            case "attempt" -> attempt(asked, line);
            case "framing" -> new Remark.Filmed(line.own(), framing(asked, line, board));
            case "pause" -> new Remark.Filmed(line.own(), pause(asked, line));
            case "cut" -> new Remark.Filmed(line.own(), cut(asked, line));
            case "camera" -> new Remark.Filmed(line.own(), camera(asked, line));
            case "sound" -> new Remark.Filmed(0, sound(asked, line));
            case "point" -> new Remark.Filmed(0, point(asked, line));
            default -> throw new ProblemException("there is no such action", "the film", "load the page again");
        };
    }

    private static Remark attempt(JsonNode asked, FilmBoard.Line line) throws ProblemException {
        int take = asked.path("take").asInt();
        int ordinal = asked.path("ordinal").asInt();
        if (line.tried().stream().noneMatch(a -> a.take() == take && a.ordinal() == ordinal)) {
            throw new ProblemException("there is no such attempt", "line " + line.number(), "look again");
        }
        return new Remark.Decided(line.own(), Decision.Choice.KEEP, take, ordinal);
    }

    private static FilmChange framing(JsonNode asked, FilmBoard.Line line, FilmBoard board) throws ProblemException {
        String framing = asked.path("framing").asText();
        boolean closer = framing.equals(FilmChoices.Framing.CLOSER.name());
        used(line);
        if (closer && !FilmBoardJson.canBeCloser(board)) {
            throw new ProblemException(
                    "the camera's picture is not large enough to frame it closer without loss",
                    "line " + line.number(),
                    "leave it as it was shot");
        }
        return new FilmChange.Framed(closer ? FilmChoices.Framing.CLOSER : FilmChoices.Framing.AS_SHOT);
    }

    private static FilmChange pause(JsonNode asked, FilmBoard.Line line) throws ProblemException {
        if (used(line).pause().isEmpty()) {
            throw new ProblemException(
                    "there is no pause before the first line", "line " + line.number(), "choose another");
        }
        int millis = asked.path("millis").asInt(FilmChoices.AS_READ);
        if (millis < FilmChoices.AS_READ || millis > FilmChoices.LONGEST_PAUSE) {
            throw new ProblemException(
                    "this pause is too long or too short", "line " + line.number(), "choose another");
        }
        return new FilmChange.Paused(millis);
    }

    private static FilmChange cut(JsonNode asked, FilmBoard.Line line) throws ProblemException {
        FilmBoard.Used used = used(line);
        boolean in = asked.path("edge").asText().equals(FilmChoices.Edge.IN.name());
        double at = asked.path("at").asDouble(-1);
        double other = (in ? used.out() : used.in()).seconds();
        if (!(at >= 0) || (in ? at >= other : at <= other)) {
            throw new ProblemException(
                    "a line must end after it begins", "line " + line.number(), "move the other end first");
        }
        if (in
                ? at >= used.attempt().end().seconds()
                : at <= used.attempt().start().seconds()) {
            throw new ProblemException(
                    "nothing that is said in this line would be left",
                    "line " + line.number(),
                    "leave the line out if you don't want it");
        }
        return new FilmChange.CutAt(
                used.attempt().take(),
                used.attempt().ordinal(),
                in ? FilmChoices.Edge.IN : FilmChoices.Edge.OUT,
                StreamTime.ofSeconds(at));
    }

    private static FilmChange camera(JsonNode asked, FilmBoard.Line line) throws ProblemException {
        String camera = asked.path("camera").asText();
        if (!line.cameras().contains(camera)) {
            throw new ProblemException(
                    "that camera does not show this line", "line " + line.number(), "choose another one");
        }
        return new FilmChange.SeenBy(camera);
    }

    private static FilmChange sound(JsonNode asked, FilmBoard.Line line) throws ProblemException {
        String sound = asked.path("sound").asText();
        if (!line.sounds().contains(sound)) {
            throw new ProblemException(
                    "this line cannot be heard from that file", "line " + line.number(), "choose another one");
        }
        return new FilmChange.HeardFrom(sound);
    }

    private static FilmChange point(JsonNode asked, FilmBoard.Line line) throws ProblemException {
        String camera = used(line)
                .camera()
                .orElseThrow(() -> new ProblemException(
                        "no camera shows this line", "line " + line.number(), "choose another line"));
        int across = Math.max(0, Math.min(1000, asked.path("across").asInt(-1)));
        int down = Math.max(0, Math.min(1000, asked.path("down").asInt(-1)));
        return new FilmChange.KeptPoint(camera, new FilmChoices.Point(across, down));
    }

    private static FilmBoard.Used used(FilmBoard.Line line) throws ProblemException {
        return line.used()
                .orElseThrow(() -> new ProblemException(
                        "this line is not in the film", "line " + line.number(), "choose an attempt for it first"));
    }

    /** Takes back that a line was left out, whoever decided it. */
    private static Remark putBack(SessionState state, int line) throws ProblemException {
        return state.remarks().acts().standing().stream()
                .filter(act -> act.change() instanceof Act.Decided decided
                        && decided.line() == line
                        && decided.decision().choice() == Decision.Choice.LEAVE_OUT)
                .reduce((a, b) -> b)
                .<Remark>map(act -> new Remark.Retracted(act.number()))
                .orElseThrow(() ->
                        new ProblemException("an earlier session says so", "line " + line, "choose an attempt for it"));
    }

    /** What the page would take back next. */
    private record Last(Path session, Act act) {}

    private Optional<Last> undoable(FilmBoard board) {
        List<Path> newestFirst = new ArrayList<>(
                board.sessions().stream().map(FilmBoard.Source::folder).toList());
        Collections.reverse(newestFirst);
        return Optional.ofNullable(decided.peek())
                .flatMap(session -> last(board, session))
                .or(() -> newestFirst.stream()
                        .flatMap(session -> last(board, session).stream())
                        .findFirst());
    }

    private static Optional<Last> last(FilmBoard board, Path session) {
        return board.sessions().stream()
                .filter(source -> source.folder().equals(session))
                .flatMap(source -> source.state().remarks().acts().last(FilmDecisions.AUTHOR).stream())
                .map(act -> new Last(session, act))
                .findFirst();
    }

    private void undo(FilmBoard board) throws ProblemException {
        Last last = undoable(board)
                .orElseThrow(() -> new ProblemException("there is nothing to undo", "the film", "go on"));
        write(last.session(), new Remark.Retracted(last.act().number()));
        decided.removeFirstOccurrence(last.session());
    }

    /** Returns when it is in the journal. */
    private void write(Path session, Remark remark) throws ProblemException {
        ServedSession place = courses.directory(courses.seen().name())
                .orElseThrow(() -> new ProblemException("no course is open", "the film", "open one first"))
                .session(CourseJson.name(session))
                .orElseThrow(() -> new ProblemException(
                        "this session is not one of the course", session.toString(), "open its course first"));
        CompletionLatch answered = new CompletionLatch();
        Latest<String> trouble = new Latest<>("");
        place.session()
                .ask(
                        state -> List.of(new NoteCommand.Add(new Remark.Signed(FilmDecisions.AUTHOR, remark))),
                        new Request.Reply() {
                            @Override
                            public void done() {
                                answered.come();
                            }

                            @Override
                            public void refused(String why) {
                                failed(why);
                            }

                            @Override
                            public void failed(String what) {
                                trouble.set(what);
                                answered.come();
                            }
                        });
        if (!answered.await(PATIENCE_MILLIS)) {
            throw new ProblemException("the disk does not answer", session.toString(), "wait a moment and look again");
        }
        if (!trouble.get().isEmpty()) {
            throw new ProblemException(trouble.get(), session.toString(), "look again");
        }
    }
}
