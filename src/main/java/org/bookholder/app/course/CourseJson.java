package org.bookholder.app.course;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.ZoneId;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.course.CourseModule;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardJson;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.page.CoursePage;
import org.bookholder.desk.LinesJson;
import org.bookholder.desk.PickupListJson;
import org.bookholder.session.SessionState;

/** A course as JSON for its page at the desk. Times of day are milliseconds since 1970, lengths are seconds. */
public final class CourseJson {
    private static final int NAME_BYTES = 8;

    /** How a session stands that another process has open. */
    static final String READ_ELSEWHERE = "being read now";

    private final ObjectNode json = JsonNodeFactory.instance.objectNode();
    private final ArrayNode sessions = JsonNodeFactory.instance.arrayNode();

    CourseJson(String title, ZoneId zone) {
        json.put("title", title);
        json.put("zone", zone.getId());
        json.set("sessions", sessions);
    }

    /** Adds the board and the plan. */
    void board(CourseStatus view, ZoneId zone) {
        Board board = view.board();
        json.set("board", BoardJson.of(board));
        json.put("page", CoursePage.fragment(board, view.plan(), view.burnDown(zone)));
        ArrayNode edited = json.putArray("edited");
        board.lessons().forEach(state -> edited.add(state.edited().isPresent()));
    }

    /** Adds how many marks can be undone. */
    void undoable(int marks) {
        json.put("undoable", marks);
    }

    /** Adds the sessions that cannot be read, one line each. */
    void left(List<String> troubles) {
        ArrayNode left = json.putArray("left");
        troubles.forEach(left::add);
    }

    /**
     * Adds a session.
     *
     * @param lesson the state of its lesson; empty if the sessions belong to no course
     */
    void session(RecordedSession session, Optional<LessonState> lesson, String standing) {
        SessionState state = session.state();
        ObjectNode node = sessions.addObject();
        node.put("name", name(session.folder()));
        node.put("folder", session.folder().toString());
        node.put(
                "lesson",
                lesson.map(LessonState::lesson)
                        .map(Lesson::title)
                        .orElse(state.script().title()));
        node.put("number", lesson.map(l -> l.lesson().number()).orElse(0));
        node.put(
                "module",
                lesson.flatMap(l -> l.lesson().module())
                        .map(CourseModule::heading)
                        .orElse(""));
        node.put("began", session.began().toEpochMilli());
        node.put("standing", standing);
        node.put("takes", state.takes().count());
        node.put("length", Math.round(state.now().seconds()));
        LinesJson.put(node, state);
        ArrayNode lines = PickupListJson.of(state);
        Optional<Set<String>> open = lesson.map(CourseJson::texts);
        int left = 0;
        for (var line : lines) {
            // A later session may have read the line clean, and a line no longer in the script needs no pickup.
            boolean since = line.path("pickup").asBoolean()
                    && open.filter(texts -> !texts.contains(line.path("text").asText()))
                            .isPresent();
            ((ObjectNode) line).put("since", since);
            left += line.path("pickup").asBoolean() && !since ? 1 : 0;
        }
        node.put("open", left);
        node.set("listed", lines);
    }

    private static Set<String> texts(LessonState lesson) {
        return lesson.recording().pickups().stream()
                .map(number -> lesson.lesson().script().lines().get(number - 1).text())
                .collect(Collectors.toSet());
    }

    @Override
    public String toString() {
        return json.toString();
    }

    /** The name of a session in the desk's addresses: always the same for a folder, and reveals nothing about it. */
    public static String name(Path folder) {
        try {
            byte[] path = folder.toAbsolutePath().normalize().toString().getBytes(StandardCharsets.UTF_8);
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(path);
            return HexFormat.of().formatHex(digest, 0, NAME_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform must know SHA-256", e);
        }
    }
}
