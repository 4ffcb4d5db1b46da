package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.app.sound.MicrophoneLevels;
import org.bookholder.app.sound.SoundChecks;
import org.bookholder.app.sound.SoundJson;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.PeakLevel;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.Display;
import org.bookholder.view.settings.TypeSize;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;

/** What should be right before a lesson is read: microphone, sound, and where and how the reading window opens. */
final class BeforeRoom {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** Stands for a monitor while none is known. */
    private static final Display USUAL = new Display(1, "", 0, 0, 1920, 1080, 0);

    private final Environment here;
    private final HomeReading reading;
    private final HomeSettings settings;
    private final MicrophoneLevels levels;
    private final SoundChecks checks;
    private final DisplayList displays;

    BeforeRoom(
            Environment here,
            HomeReading reading,
            HomeSettings settings,
            MicrophoneLevels levels,
            SoundChecks checks,
            DisplayList displays) {
        this.here = here;
        this.reading = reading;
        this.settings = settings;
        this.levels = levels;
        this.checks = checks;
        this.displays = displays;
    }

    /**
     * Answers what the page asks.
     *
     * @throws ProblemException why it can't be answered or done
     */
    ObjectNode answer(JsonNode asked) throws ProblemException {
        switch (asked.path("do").asText()) {
            case "listen" -> levels.watch();
            case "check" -> {
                if (reading.standing().goesOn()) {
                    throw new ProblemException(
                            "a lesson is being read", "before you read", "check the sound when it is over");
                }
                checks.begin(settings.microphone(), levels::letGo);
            }
            case "stop" -> checks.stop();
            case "displays" -> displays.look();
            case "picture" -> {
                return picture();
            }
            default -> throw new ProblemException("there is no such action", "before you read", "load the page again");
        }
        return NODES.objectNode();
    }

    /** Lets go of everything that a reading needs. */
    void beforeReading() {
        checks.stop();
        levels.letGo();
    }

    /** What the page is told of it, by the names of its parts. */
    Map<String, JsonNode> parts() {
        return Map.of("levels", levelsJson(), "refused", refused(), "sound", sound(), "displays", displaysJson());
    }

    private JsonNode refused() {
        ArrayNode names = NODES.arrayNode();
        levels.refused().forEach(names::add);
        return names;
    }

    private JsonNode levelsJson() {
        ArrayNode all = NODES.arrayNode();
        levels.levels()
                .forEach(level -> all.addObject()
                        .put("name", level.name())
                        .put("peak", Math.round(level.peak()))
                        .put("loud", PeakLevel.of(level.peak()) == PeakLevel.TOO_HIGH)
                        .put("trouble", level.trouble()));
        return all;
    }

    private JsonNode sound() {
        SoundChecks.Status now = checks.status();
        ObjectNode sound = NODES.objectNode();
        sound.put("step", now.step().name());
        sound.put("source", now.source());
        sound.put("seconds", now.seconds());
        sound.put("trouble", now.trouble());
        now.check().ifPresent(check -> sound.set("check", SoundJson.of(check)));
        now.when().ifPresent(when -> sound.put("when", when.toEpochMilli()));
        return sound;
    }

    private JsonNode displaysJson() {
        ObjectNode json = NODES.objectNode().put("trouble", displays.known().trouble());
        ArrayNode all = json.putArray("all");
        displays.known()
                .displays()
                .forEach(display -> all.addObject()
                        .put("number", display.number())
                        .put("name", display.name())
                        .put("x", display.x())
                        .put("y", display.y())
                        .put("width", display.width())
                        .put("height", display.height()));
        return json;
    }

    /** How the reading window will look on its monitor: lengths as shares of the picture's height. */
    private ObjectNode picture() throws ProblemException {
        WindowWish wish = WindowPreferences.usual(here);
        WindowSettings how = wish.settings();
        List<Display> all = displays.known().displays();
        Display display = all.isEmpty() ? USUAL : all.get(Math.min(wish.place().monitor(), all.size()) - 1);
        boolean full = wish.place().fullScreen();
        int width = full ? display.width() : Math.min(wish.place().width(), display.width());
        int height = full ? display.height() : Math.min(wish.place().height(), display.height());
        Geometry geometry = Geometry.of(how, display.millimetres(), display.height(), width, height);
        return NODES.objectNode()
                .put("monitor", display.number())
                .put("width", (double) width / height)
                .put("em", geometry.em() / height)
                .put("pitch", geometry.pitch() / height)
                .put("columnLeft", geometry.columnLeft() / height)
                .put("columnWidth", geometry.columnWidth() / height)
                .put("eyeLine", geometry.eyeLine() / height)
                .put("words", how.columnWords())
                .put("mirrored", how.mirrored())
                .put("upsideDown", how.upsideDown())
                .put("capital", Math.round(TypeSize.capitalHeight(how.distance(), how.arcMinutes())))
                .put("sizeKnown", display.millimetres() > 0);
    }
}
