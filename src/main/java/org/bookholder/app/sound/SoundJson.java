package org.bookholder.app.sound;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.bookholder.handoff.JsonNumbers;
import org.bookholder.sound.LoudnessReading;
import org.bookholder.sound.RoomNoise;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundPath;
import org.bookholder.wording.SoundText;

/**
 * Writes a sound check as JSON for other programs: levels in dBFS, loudness in LUFS, and the remarks on each aspect.
 */
public final class SoundJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private SoundJson() {}

    /** The check as JSON. */
    public static ObjectNode of(SoundCheck check) {
        ObjectNode root = JSON.objectNode();
        root.put("verdict", SoundText.of(check.grade()));
        root.set("room", room(check));
        root.set("voice", voice(check));
        root.set("noise", noise(check.spectrum()));
        root.set("path", path(check.path()));
        root.set("voice_to_room", JsonNumbers.number(check.ratio()));
        ArrayNode remarks = root.putArray("remarks");
        check.findings().forEach(finding -> remarks.add(remark(check, finding)));
        ArrayNode sources = root.putArray("sources");
        SoundText.SOURCES.forEach(sources::add);
        return root;
    }

    private static ObjectNode room(SoundCheck check) {
        ObjectNode node = JSON.objectNode();
        node.set("floor", JsonNumbers.number(check.room().floor()));
        node.set("loudest", JsonNumbers.number(check.room().loudest()));
        node.set("offset", JsonNumbers.number(check.room().offset()));
        check.room()
                .hum()
                .ifPresentOrElse(
                        hum -> node.putObject("hum")
                                .put("hertz", hum.hertz())
                                .set("level", JsonNumbers.number(hum.level())),
                        () -> node.putNull("hum"));
        return node;
    }

    private static ObjectNode noise(RoomNoise noise) {
        ObjectNode node = JSON.objectNode();
        ArrayNode bands = node.putArray("bands");
        noise.bands()
                .forEach(band -> bands.addObject()
                        .put("hertz", Math.round(band.hertz()))
                        .set("level", JsonNumbers.number(band.level())));
        ArrayNode parts = node.putArray("parts");
        noise.parts()
                .forEach(part -> parts.addObject()
                        .put("kind", part.kind().name().toLowerCase(Locale.ROOT))
                        .put("said", SoundText.of(part))
                        .put("from", Math.round(part.from()))
                        .put("to", Math.round(part.to()))
                        .set("level", JsonNumbers.number(part.level())));
        return node;
    }

    private static ObjectNode path(SoundPath path) {
        ObjectNode node = JSON.objectNode();
        node.put("sides", path.sides().name().toLowerCase(Locale.ROOT));
        path.limit().ifPresentOrElse(hertz -> node.put("nothing_above", hertz), () -> node.putNull("nothing_above"));
        node.set("echo_seconds", JsonNumbers.number(path.echo().orElse(Double.NaN)));
        return node;
    }

    private static ObjectNode voice(SoundCheck check) {
        LoudnessReading loudness = check.voice().loudness();
        ObjectNode node = JSON.objectNode();
        node.set("speech", JsonNumbers.number(check.voice().speech().level()));
        node.set("peak", JsonNumbers.number(check.voice().peak()));
        node.put("clipped", check.voice().clipped());
        node.set("loudness", JsonNumbers.number(loudness.integrated()));
        node.set("true_peak", JsonNumbers.number(loudness.truePeak()));
        return node;
    }

    private static ObjectNode remark(SoundCheck check, SoundFinding finding) {
        SoundText text = SoundText.of(check, finding);
        ObjectNode node = JSON.objectNode();
        node.put("grade", SoundText.of(finding.grade()));
        node.put("about", text.about());
        node.put("figure", text.figure());
        node.put("advice", text.advice());
        return node;
    }
}
