package org.bookholder.course.board;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;

/** The board as JSON, for the desk and for other programs. Times are in seconds, lines are numbered from 1. */
public final class BoardJson {
    private BoardJson() {}

    /** The board. */
    public static ObjectNode of(Board board) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("title", board.course().title());
        json.put("today", board.today().toString());
        json.put("finished", board.finished());
        board.measured().pace().ifPresent(pace -> json.put("ownPace", pace));
        ArrayNode lessons = json.putArray("lessons");
        board.lessons().forEach(state -> lessons.add(lesson(state)));
        ArrayNode unreadable = json.putArray("unreadable");
        board.course()
                .unreadable()
                .forEach(lesson -> unreadable
                        .addObject()
                        .put("number", lesson.number())
                        .put("name", lesson.name())
                        .put("state", lesson.state())
                        .put("why", lesson.why()));
        ArrayNode modules = json.putArray("modules");
        board.modules().stream()
                .filter(module -> module.module().isPresent())
                .forEach(module -> modules.addObject()
                        .put("number", module.module().orElseThrow().number())
                        .put("title", module.module().orElseThrow().title())
                        .put("lessons", module.all())
                        .put("ready", module.ready())
                        .put("seconds", module.seconds()));
        facts(json.putArray("due"), board.due());
        facts(json.putArray("lookedAt"), board.lookedAt());
        facts(json.putArray("ageing"), board.ageing());
        return json;
    }

    private static ObjectNode lesson(LessonState state) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("number", state.lesson().number());
        json.put("name", state.lesson().name());
        json.put("title", state.lesson().title());
        state.lesson().module().ifPresent(module -> json.put("module", module.number()));
        json.put("words", state.lesson().script().spokenWords());
        json.put("seconds", state.seconds());
        json.put("state", state.stage().label());
        json.put("next", state.next());
        state.planned().ifPresent(day -> json.put("planned", day.toString()));
        numbers(json.putArray("unread"), state.recording().unread());
        numbers(json.putArray("pickups"), state.recording().pickups());
        state.export().ifPresent(file -> json.put("export", String.valueOf(file.getFileName())));
        ArrayNode findings = json.putArray("findings");
        state.check().ifPresent(check -> check.findings().forEach(findings::add));
        ArrayNode missing = json.putArray("missing");
        state.missing().forEach(missing::add);
        return json;
    }

    /** Facts, each with its lesson, its line, and the files that hold it. */
    public static void facts(ArrayNode array, List<DueFact> facts) {
        for (DueFact fact : facts) {
            ObjectNode json = array.addObject();
            json.put("lesson", fact.lesson().name());
            json.put("number", fact.lesson().number());
            json.put("title", fact.lesson().title());
            json.put("line", fact.fact().line());
            json.put("fact", fact.fact().text());
            json.put("due", fact.fact().due().toString());
            json.put("text", fact.text());
            json.put("holding", GateText.holding(fact));
            fact.lookedAt().ifPresent(when -> json.put("lookedAt", when.toString()));
            names(json.putArray("exports"), fact.exports());
            names(json.putArray("captions"), fact.captions());
        }
    }

    private static void names(ArrayNode array, List<Path> files) {
        files.forEach(file -> array.add(String.valueOf(file.getFileName())));
    }

    private static void numbers(ArrayNode array, List<Integer> numbers) {
        numbers.forEach(array::add);
    }
}
