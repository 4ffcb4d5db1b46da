package org.bookholder.delivery;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.handoff.JsonNumbers;
import org.bookholder.sound.LoudnessReading;

/**
 * A report for other programs. {@code check.schema.json} beside this class says what is in it. Times are seconds of the film
 * to three decimals; a figure that is not known is null.
 */
public final class CheckJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private CheckJson() {}

    /** One report, as it is kept beside the film. */
    public static String of(CheckReport report) {
        return text(node(report));
    }

    /** Several reports, as an array. */
    public static String of(List<CheckReport> reports) {
        ArrayNode all = JSON.arrayNode();
        reports.forEach(report -> all.add(node(report)));
        return text(all);
    }

    private static String text(Object node) {
        try {
            return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of JSON must be writable", e);
        }
    }

    private static ObjectNode node(CheckReport report) {
        ObjectNode root = JSON.objectNode();
        root.put("file", report.film().name());
        root.put("bytes", report.film().bytes());
        root.put("modified", report.modified().toString());
        root.put("checked", report.checked().toString());
        root.put("profile", report.profile());
        root.put("script", report.script().orElse(null));
        root.set("compared", report.compared().map(CheckJson::compared).orElse(null));
        root.put("verdict", report.gravest().map(CheckJson::grade).orElse("fine"));
        root.set("film", film(report.film()));
        root.set("loudness", report.loudness().map(CheckJson::loudness).orElse(null));
        ArrayNode findings = root.putArray("findings");
        report.findings().forEach(finding -> findings.add(finding(finding)));
        return root;
    }

    private static ObjectNode film(Film film) {
        ObjectNode node = JSON.objectNode();
        node.put("container", film.container());
        node.set("length", JsonNumbers.seconds(film.length()));
        node.set("picture", film.picture().map(CheckJson::picture).orElse(null));
        node.set("sound", film.sound().map(CheckJson::sound).orElse(null));
        return node;
    }

    private static ObjectNode picture(Film.Picture picture) {
        ObjectNode node = JSON.objectNode();
        node.put("codec", picture.codec());
        node.put("pixels", picture.pixels());
        node.put("width", picture.width());
        node.put("height", picture.height());
        node.set("shape", JsonNumbers.number(picture.shape()));
        node.put("interlaced", picture.interlaced());
        node.put("rate", picture.rate().label());
        node.put("variable", picture.variable());
        node.put("bit_rate", picture.bitRate());
        return node;
    }

    private static ObjectNode sound(Film.Sound sound) {
        ObjectNode node = JSON.objectNode();
        node.put("codec", sound.codec());
        node.put("rate", sound.rate());
        node.put("channels", sound.channels());
        node.put("bit_rate", sound.bitRate());
        return node;
    }

    private static ObjectNode compared(ComparedSound compared) {
        ObjectNode node = JSON.objectNode();
        node.put("sessions", compared.sessions());
        node.set("shared", JsonNumbers.seconds(compared.shared()));
        node.set("read", JsonNumbers.seconds(compared.read()));
        return node;
    }

    private static ObjectNode loudness(LoudnessReading reading) {
        ObjectNode node = JSON.objectNode();
        node.set("integrated", JsonNumbers.number(reading.integrated()));
        node.set("range", JsonNumbers.number(reading.range()));
        node.set("loudest_momentary", JsonNumbers.number(reading.loudestMomentary()));
        node.set("loudest_short_term", JsonNumbers.number(reading.loudestShortTerm()));
        node.set("true_peak", JsonNumbers.number(reading.truePeak()));
        return node;
    }

    private static String grade(Grade grade) {
        return switch (grade) {
            case LOOK -> "look";
            case MEND -> "mend";
        };
    }

    private static ObjectNode finding(Finding finding) {
        ObjectNode node = JSON.objectNode();
        node.put("grade", grade(finding.grade()));
        node.put("kind", finding.kind());
        node.set(
                "start",
                finding.place().map(place -> JsonNumbers.seconds(place.start())).orElse(NullNode.getInstance()));
        node.set(
                "end",
                finding.place().map(place -> JsonNumbers.seconds(place.end())).orElse(NullNode.getInstance()));
        node.put("what", finding.what());
        node.put("remedy", finding.remedy());
        return node;
    }
}
