package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.app.script.CourseImport;
import org.bookholder.app.script.CourseImport.NewLesson;
import org.bookholder.app.script.CourseImport.Offered;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.DocumentTable;

/** The room in which a course is made from documents and texts, or lessons are added to one. Safe for use by several threads. */
final class ImportRoom {
    private static final Pattern COLUMN = Pattern.compile("(\\d{1,4}):(\\d{1,4})");

    private final HomeCourses courses;
    private final AllowedPaths paths;
    private final ScriptRoom scripts;

    ImportRoom(HomeCourses courses, AllowedPaths paths, ScriptRoom scripts) {
        this.courses = courses;
        this.paths = paths;
        this.scripts = scripts;
    }

    /**
     * Answers what the page asks.
     *
     * @throws ProblemException why it can't be answered or done
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        return switch (asked.path("do").asText()) {
            case "pasted" ->
                offered(CourseImport.look(
                        asked.path("name").asText(),
                        asked.path("text").asText().getBytes(StandardCharsets.UTF_8),
                        Map.of()));
            case "create" -> create(asked);
            case "add" -> add(asked);
            default -> throw new ProblemException("there is no such action", "new course", "load the page again");
        };
    }

    /**
     * How a file that was dropped would be taken over.
     *
     * @param query its name, and the columns of its tables that are spoken, such as {@code 1:0 2:1}, if they were chosen
     */
    ObjectNode dropped(Map<String, String> query, byte[] bytes) throws ProblemException {
        Map<Integer, Set<Integer>> columns = new HashMap<>();
        for (String table : query.getOrDefault("tables", "").split(" ", -1)) {
            if (table.matches("\\d{1,4}")) {
                columns.put(Integer.valueOf(table), new HashSet<>());
            }
        }
        Matcher chosen = COLUMN.matcher(query.getOrDefault("columns", ""));
        while (chosen.find()) {
            columns.computeIfAbsent(Integer.valueOf(chosen.group(1)), none -> new HashSet<>())
                    .add(Integer.valueOf(chosen.group(2)));
        }
        return offered(CourseImport.look(query.getOrDefault("name", ""), bytes, columns));
    }

    private ObjectNode offered(Offered offered) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("name", offered.lesson().name());
        json.put("text", offered.lesson().text());
        ArrayNode tables = json.putArray("tables");
        for (DocumentTable table : offered.document().tables()) {
            ArrayNode columns = tables.addObject().put("number", table.number()).putArray("columns");
            table.columns()
                    .forEach(column -> columns.addObject()
                            .put("heading", column.heading())
                            .put("words", column.words())
                            .put("spoken", column.spoken()));
        }
        json.set("look", scripts.look(Path.of(offered.lesson().name()), offered));
        return json;
    }

    private ObjectNode create(JsonNode asked) throws ProblemException {
        String place = asked.path("place").asText();
        Path parent = paths.folder(place.isEmpty() ? paths.userHome().toString() : place);
        Path made = CourseImport.create(
                parent, asked.path("name").asText(), asked.path("title").asText(), lessons(asked));
        courses.open(made);
        return JsonNodeFactory.instance.objectNode().put("folder", made.toString());
    }

    /** Adds lessons to the course that is shown. */
    private ObjectNode add(JsonNode asked) throws ProblemException {
        String folder = courses.seen().folder();
        if (folder.isEmpty()) {
            throw new ProblemException("no course is open", "new lesson", "open one first");
        }
        CourseImport.add(Path.of(folder), lessons(asked));
        courses.look();
        return JsonNodeFactory.instance.objectNode().put("folder", folder);
    }

    private static List<NewLesson> lessons(JsonNode asked) {
        List<NewLesson> lessons = new ArrayList<>();
        asked.path("lessons")
                .forEach(lesson -> lessons.add(new NewLesson(
                        lesson.path("name").asText(), lesson.path("text").asText())));
        return lessons;
    }
}
