package org.bookholder.handoff;

import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ValueNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.bookholder.timing.StreamTime;

/** Numbers for JSON files, to three decimals; an unknown figure is null. */
public final class JsonNumbers {
    private JsonNumbers() {}

    /** A number; null if it is not finite. */
    public static ValueNode number(double value) {
        return Double.isFinite(value)
                ? DecimalNode.valueOf(BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP))
                : NullNode.getInstance();
    }

    /** A time in seconds. */
    public static ValueNode seconds(StreamTime time) {
        return number(time.seconds());
    }
}
