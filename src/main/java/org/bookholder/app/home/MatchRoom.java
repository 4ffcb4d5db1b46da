package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.SourceChoices;
import org.bookholder.app.footage.TakeSourcesJson;
import org.bookholder.problem.ProblemException;
import org.bookholder.wording.ActText;

/** Which files give picture and sound of a session's takes, on the page, and the choice of others. Safe for several threads. */
final class MatchRoom {
    private final SourceChoices choices;
    private final HomeCourses courses;
    private final AllowedPaths paths;

    MatchRoom(Environment here, HomeCourses courses, AllowedPaths paths) {
        choices = new SourceChoices(here);
        this.courses = courses;
        this.paths = paths;
    }

    /**
     * Answers what the page asks: always with what is used then.
     *
     * @throws ProblemException why it can't be done
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        Path session = paths.path(asked.path("session").asText());
        String what = asked.path("do").asText();
        if (!what.equals("show")) {
            courses.letGo(session);
        }
        if (what.equals("choose")) {
            int take = asked.path("take").asInt();
            choices.choose(
                    session,
                    new SourceChoices.Wish(
                            take == 0 ? List.of() : List.of(take), text(asked, "picture"), text(asked, "sound")));
        } else if (what.equals("undo")) {
            choices.undo(session);
        }
        SourceChoices.Shown shown = choices.show(session);
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.set("takes", TakeSourcesJson.of(shown.takes()));
        shown.undo().ifPresent(act -> json.put("undo", ActText.of(act)));
        return json;
    }

    private static Optional<String> text(JsonNode asked, String name) {
        return Optional.ofNullable(asked.get(name)).map(JsonNode::asText);
    }
}
