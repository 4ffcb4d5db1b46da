package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.course.CourseJson;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.app.session.SessionStorage;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.input.KeyGuide;
import org.bookholder.wording.Labels;

/** What the settings show beside what can be set: sessions and the room they take, keys, speech model. */
final class SettingsRoom {
    private final Environment here;
    private final HomeCourses courses;
    private final SessionStorage storage;

    SettingsRoom(Environment here, HomeCourses courses) {
        this.here = here;
        this.courses = courses;
        storage = new SessionStorage(here);
    }

    /**
     * Answers what the page asks.
     *
     * @throws ProblemException why it can't be answered or done
     */
    ObjectNode answer(JsonNode asked) throws ProblemException {
        return switch (asked.path("do").asText()) {
            case "facts" -> facts();
            case "sessions" -> sessions();
            case "remove" -> remove(asked);
            default -> throw new ProblemException("there is no such action", "settings", "load the page again");
        };
    }

    private ObjectNode facts() throws ProblemException {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("model", here.model().toString());
        json.put("modelThere", Files.isDirectory(here.model()));
        ArrayNode keys = json.putArray("keys");
        KeyGuide.entries(WindowPreferences.usual(here).settings().keys())
                .forEach(entry -> keys.addObject().put("keys", entry.keys()).put("does", entry.does()));
        return json;
    }

    private List<Path> places() {
        List<Path> places = new ArrayList<>(List.of(here.sessions()));
        courses.known()
                .all()
                .forEach(course -> places.add(Path.of(course.folder()).resolve("sessions")));
        return places;
    }

    private ObjectNode sessions() throws ProblemException {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("place", here.sessions().toString());
        ArrayNode all = json.putArray("sessions");
        for (SessionStorage.Kept kept : storage.list(places())) {
            ObjectNode row = all.addObject();
            row.put("name", CourseJson.name(kept.summary().folder()));
            row.put("folder", kept.summary().folder().toString());
            row.put("title", kept.summary().title());
            row.put("bytes", kept.bytes());
            row.put("seconds", Math.round(kept.summary().length().seconds()));
            row.put("standing", Labels.of(kept.summary().standing()));
            row.put("trouble", kept.summary().trouble());
            kept.summary().began().ifPresent(began -> row.put("began", began.toEpochMilli()));
        }
        return json;
    }

    /** Removes a session if the page has asked twice. */
    private ObjectNode remove(JsonNode asked) throws ProblemException {
        if (!asked.path("sure").asBoolean()) {
            throw new ProblemException("nothing was removed", "settings", "say that you are sure");
        }
        String name = asked.path("name").asText();
        for (SessionStorage.Kept kept : storage.list(places())) {
            Path folder = kept.summary().folder();
            if (CourseJson.name(folder).equals(name)) {
                courses.letGo(folder);
                storage.remove(folder, places());
                courses.look();
                return sessions();
            }
        }
        throw new ProblemException("there is no such session any more", name, "look at the list again");
    }
}
