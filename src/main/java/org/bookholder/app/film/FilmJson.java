package org.bookholder.app.film;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.bookholder.delivery.CheckJson;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.film.plan.PlacedCover;
import org.bookholder.footage.Channels;
import org.bookholder.handoff.JsonNumbers;

/** What came of making a film, for other programs. Times are seconds; "in" and "out" of the session's audio. */
public final class FilmJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private FilmJson() {}

    /** The result as text. */
    public static String of(FilmResult result) {
        ObjectNode root = JSON.objectNode();
        root.put("file", result.made().file().toString());
        root.put("already", result.already());
        root.set("seconds", JsonNumbers.number(result.made().seconds()));
        root.put("rate", result.plan().rate().label());
        ArrayNode clips = root.putArray("clips");
        result.plan().clips().stream().filter(FilmClip::used).forEach(clip -> clips.add(clip(result, clip)));
        ArrayNode covers = root.putArray("covers");
        for (PlacedCover cover : result.plan().covers()) {
            ObjectNode node = covers.addObject().put("file", cover.shot().file().toString());
            node.put("line", cover.cover().line());
            node.put("word", cover.cover().word());
            node.set(
                    "film",
                    JsonNumbers.number(result.plan().rate().length(cover.from()).seconds()));
            node.put("frames", cover.to() - cover.from());
        }
        root.set("sound", sound(result));
        ArrayNode missing = root.putArray("missing");
        result.plan().missing().forEach(missing::add);
        ArrayNode marked = root.putArray("marked");
        result.marked().forEach(marked::add);
        ArrayNode remarks = root.putArray("remarks");
        result.remarks().forEach(remarks::add);
        ArrayNode obstacles = root.putArray("obstacles");
        for (FilmObstacle obstacle : result.obstacles()) {
            obstacles
                    .addObject()
                    .put("where", obstacle.where())
                    .put("what", obstacle.what())
                    .put("remedy", obstacle.ofDraft(FilmObstacle.Told.TERMINAL).remedy());
        }
        try {
            ObjectMapper mapper = new ObjectMapper();
            if (result.check().isPresent()) {
                root.set("check", mapper.readTree(CheckJson.of(result.check().get())));
            } else {
                root.putNull("check");
            }
            return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of JSON must be writable", e);
        }
    }

    private static ObjectNode clip(FilmResult result, FilmClip clip) {
        FilmPlan plan = result.plan();
        ObjectNode node = JSON.objectNode();
        node.put("line first", clip.firstLine());
        node.put("line last", clip.lastLine());
        node.put("session", result.sessions().get(clip.session()).toString());
        node.put("take", clip.take());
        node.set("in", JsonNumbers.number(clip.in().seconds()));
        node.set("out", JsonNumbers.number(clip.out().seconds()));
        node.set("film", JsonNumbers.number(plan.rate().length(clip.start()).seconds()));
        node.put("frames", clip.frames());
        node.put("scale", clip.shot().map(shot -> shot.scale() / 100.0).orElse(1.0));
        node.put("source", clip.shot().map(shot -> shot.file().toString()).orElse(null));
        node.put("source frame", clip.shot().map(shot -> shot.first()).orElse(null));
        node.put("sound", clip.heard().map(heard -> heard.file().toString()).orElse(null));
        node.put(
                "channels",
                clip.heard().flatMap(Heard::channels).map(Channels::text).orElse(null));
        return node;
    }

    private static ObjectNode sound(FilmResult result) {
        ObjectNode node = JSON.objectNode();
        node.put("source", FilmText.soundSources(result.plan()));
        ArrayNode takes = node.putArray("takes");
        result.heard().forEach(takes::add);
        node.set("loudness", JsonNumbers.number(result.made().loudness().integrated()));
        node.set("true peak", JsonNumbers.number(result.made().loudness().truePeak()));
        return node;
    }
}
