package org.bookholder.app.script;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.bookholder.app.session.CourseHabits.Saying;
import org.bookholder.course.prepare.HardStretch;
import org.bookholder.pace.RunningTime;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.PreparedScript.UnknownWord;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.TakenBracket;
import org.bookholder.session.AcceptedReading;

/** How a script is taken, as JSON. Lengths are seconds; lines of the source are counted from 1, 0 stands for none. */
public final class ScriptJson {
    private static final int MOST_SAYINGS = 200;
    private static final Pattern NUMBER = Pattern.compile("\\p{N}");

    private ScriptJson() {}

    /** All of it, for other programs. */
    public static ObjectNode of(ScriptInspection found) {
        return json(found, true, session -> Optional.empty());
    }

    /**
     * What the page shows: as above, but only numbers come with their forms.
     *
     * @param addresses where on the page a session is, by its folder
     */
    public static ObjectNode forPage(ScriptInspection found, Function<Path, Optional<String>> addresses) {
        return json(found, false, addresses);
    }

    private static ObjectNode json(ScriptInspection found, boolean whole, Function<Path, Optional<String>> addresses) {
        Script script = found.script();
        int pace = script.settings().targetPace();
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("title", script.title());
        json.put("pace", pace);
        json.put("spoken words", script.spokenWords());
        json.put("seconds", seconds(script.spokenWords(), pace));
        ArrayNode lines = json.putArray("lines");
        script.lines().forEach(line -> line(lines.addObject(), line, pace, whole));
        ArrayNode directions = json.putArray("directions");
        script.elements().stream()
                .filter(Direction.class::isInstance)
                .map(Direction.class::cast)
                .forEach(direction -> directions
                        .addObject()
                        .put("source", direction.sourceLine())
                        .put("text", direction.text())
                        .put("paragraph", direction.paragraph()));
        ArrayNode speakers = json.putArray("speakers");
        found.speakers()
                .forEach(speaker ->
                        speakers.addObject().put("name", speaker.name()).put("read", speaker.read()));
        leftOut(json.putArray("left out"), found.leftOut());
        missingPictures(json.putArray("missing pictures"), found.missingPictures());
        brackets(json.putArray("brackets"), found.brackets());
        ArrayNode unknown = json.putArray("unknown");
        found.unknown().forEach(word -> unknown(unknown.addObject(), word));
        json.put("words checked", found.wordsChecked());
        found.unheard().ifPresent(why -> json.put("unheard", why));
        ArrayNode hard = json.putArray("hard");
        found.hard().forEach(stretch -> hard(hard.addObject(), stretch));
        ArrayNode sayings = json.putArray("said in this course");
        found.sayings().stream().limit(MOST_SAYINGS).forEach(saying -> saying(sayings.addObject(), saying, addresses));
        return json;
    }

    /** Adds which words are heard as something else when somebody reads them; each with the presenter's name. */
    public static void heardAs(ObjectNode json, String presenter, List<AcceptedReading> known) {
        ArrayNode heard = json.withArray("/heard as");
        known.forEach(one -> heard.addObject()
                .put("presenter", presenter)
                .put("written", one.written())
                .put("heard", one.said()));
    }

    private static void saying(ObjectNode json, Saying saying, Function<Path, Optional<String>> addresses) {
        json.put("written", saying.written())
                .put("said", saying.said())
                .put("chosen", saying.chosen())
                .put("times", saying.times());
        saying.last()
                .ifPresent(last -> json.put(
                                "session", String.valueOf(last.session().getFileName()))
                        .put("take", last.said().take())
                        .put("from", last.said().from())
                        .put("to", last.said().to()));
        saying.last().flatMap(last -> addresses.apply(last.session())).ifPresent(at -> json.put("address", at));
    }

    private static void line(ObjectNode json, ScriptLine line, int pace, boolean whole) {
        json.put("line", line.number());
        json.put("source", line.sourceLine());
        json.put("paragraph", line.paragraph());
        json.put("text", line.text());
        json.put("seconds", seconds(line.spokenWords(), pace));
        ArrayNode words = json.putArray("words");
        for (ScriptWord word : line.words()) {
            boolean number = NUMBER.matcher(word.written()).find();
            ObjectNode one = words.addObject().put("written", word.written());
            if (whole || number) {
                ArrayNode forms = one.putArray("forms");
                word.spoken().forEach(form -> form.forEach(forms.addArray()::add));
            }
            if (!whole) {
                one.put("plain", word.plain());
                one.put("said", String.join(" ", word.spoken().get(0)));
            }
        }
    }

    private static void leftOut(ArrayNode json, List<LeftOut> all) {
        for (LeftOut left : all) {
            json.addObject()
                    .put("source", left.sourceLine())
                    .put("what", left.what())
                    .put("why", left.why());
        }
    }

    private static void missingPictures(ArrayNode json, List<AuthorPicture.Missing> all) {
        for (AuthorPicture.Missing missing : all) {
            json.addObject()
                    .put("source", missing.cover().sourceLine())
                    .put("file", missing.cover().file())
                    .put("what", missing.why().what())
                    .put("remedy", missing.why().remedy());
        }
    }

    private static void brackets(ArrayNode json, List<TakenBracket> all) {
        for (TakenBracket bracket : all) {
            json.addObject()
                    .put("source", bracket.sourceLine())
                    .put("text", bracket.text())
                    .put("read", bracket.read())
                    .put("alone", bracket.alone())
                    .put("why", bracket.why());
        }
    }

    private static void unknown(ObjectNode json, UnknownWord word) {
        json.put("word", word.spoken())
                .put("heard as", String.join(" ", word.standIn()))
                .put("line", word.line());
    }

    private static void hard(ObjectNode json, HardStretch stretch) {
        boolean counted = stretch.count() > 1;
        json.put("line", stretch.line())
                .put(
                        "what",
                        (counted ? stretch.count() + " " : "") + stretch.kind().what())
                .put("words", stretch.words())
                .put("remedy", stretch.kind().remedy());
    }

    private static double seconds(int words, int pace) {
        return Math.round(RunningTime.of(words, pace).seconds() * 10) / 10.0;
    }
}
