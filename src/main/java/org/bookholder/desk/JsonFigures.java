package org.bookholder.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.bookholder.timing.StreamTime;

/** Writes figures as the page expects them. */
final class JsonFigures {
    private JsonFigures() {}

    /** A time in seconds, to the millisecond. */
    static BigDecimal seconds(StreamTime time) {
        return BigDecimal.valueOf(time.seconds()).setScale(3, RoundingMode.HALF_UP);
    }

    /** Puts a figure rounded to some places; null where it is not known. */
    static void put(ObjectNode node, String name, double value, int places) {
        if (Double.isFinite(value)) {
            node.put(name, BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP));
        } else {
            node.putNull(name);
        }
    }
}
