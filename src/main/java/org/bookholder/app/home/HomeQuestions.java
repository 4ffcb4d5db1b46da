package org.bookholder.app.home;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Map;
import org.bookholder.problem.ProblemException;

/** Passes on what rooms of the page ask for, each to its room. Safe for use by several threads. */
final class HomeQuestions {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final HomeCourses courses;
    private final ScriptRoom scripts;
    private final ImportRoom imports;
    private final PlanRoom plan;
    private final BeforeRoom before;
    private final ListsRoom lists;
    private final PapersRoom papers;
    private final SettingsRoom settings;
    private final FilmRoom film;
    private final MatchRoom match;
    private final FileDialogs dialogs;
    private final Work work;

    /** Begins long work. */
    @FunctionalInterface
    interface Work {
        /** Begins work of a kind with what was filled in; throws a problem if something is missing or not understood. */
        void begin(String kind, JsonNode form) throws ProblemException;
    }

    HomeQuestions(
            HomeCourses courses,
            ScriptRoom scripts,
            ImportRoom imports,
            PlanRoom plan,
            BeforeRoom before,
            ListsRoom lists,
            PapersRoom papers,
            SettingsRoom settings,
            FilmRoom film,
            MatchRoom match,
            FileDialogs dialogs,
            Work work) {
        this.courses = courses;
        this.scripts = scripts;
        this.imports = imports;
        this.plan = plan;
        this.before = before;
        this.lists = lists;
        this.papers = papers;
        this.settings = settings;
        this.film = film;
        this.match = match;
        this.dialogs = dialogs;
        this.work = work;
    }

    String answer(String json) throws ProblemException {
        JsonNode asked;
        try {
            asked = MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new ProblemException("this is not JSON", "the page", "load the page again", e);
        }
        courses.mustBeOpen(asked);
        return switch (asked.path("room").asText()) {
            case "scripts" -> scripts.answer(asked).toString();
            case "work" -> {
                work.begin(asked.path("kind").asText(), asked.path("form"));
                yield "{}";
            }
            case "film" -> film.answer(asked).toString();
            case "match" -> match.answer(asked).toString();
            case "plan" -> plan.answer(asked).toString();
            case "papers" -> papers.answer(asked).toString();
            case "lists" -> lists.answer(asked).toString();
            case "settings" -> settings.answer(asked).toString();
            case "before" -> before.answer(asked).toString();
            case "files" -> dialogs.answer(asked).toString();
            case "new" -> imports.answer(asked).toString();
            default -> throw unknown();
        };
    }

    String dropped(Map<String, String> query, byte[] bytes) throws ProblemException {
        return imports.dropped(query, bytes).toString();
    }

    private static ProblemException unknown() {
        return new ProblemException("there is no such room", "the page", "load the page again");
    }
}
