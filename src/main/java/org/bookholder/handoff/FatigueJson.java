package org.bookholder.handoff;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.Locale;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.wording.BreakText;

/** The fatigue part of the JSON notes. */
final class FatigueJson {
    private FatigueJson() {}

    static ObjectNode of(FatigueReport report) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        put(node, "reading", report.reading());
        put(node, "onCamera", report.onCamera());
        put(node, "sinceBreak", report.sinceBreak());
        put(node, "readingSinceBreak", report.readingSinceBreak());
        node.set("fluffs", JsonNumbers.number(report.fluffs()));
        node.set("baselineFluffs", JsonNumbers.number(report.baselineFluffs()));
        ArrayNode advice = node.putArray("advice");
        for (BreakAdvice entry : report.advice()) {
            ObjectNode one = advice.addObject();
            one.put("reason", lower(entry.reason()));
            one.put("urgency", lower(entry.urgency()));
            put(one, "left", entry.left());
            one.put("text", BreakText.of(entry));
        }
        return node;
    }

    private static void put(ObjectNode node, String name, Duration duration) {
        node.set(name, JsonNumbers.number(duration.toMillis() / 1000.0));
    }

    private static String lower(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
