package org.bookholder.script.source;

import java.util.List;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.model.TakenBracket;

/**
 * A script together with what of its file does not become a line or a direction.
 *
 * @param script the script
 * @param leftOut what is neither spoken nor shown, in the order of the file
 * @param brackets how remarks in square brackets were taken, in the order of the file
 * @param speakers those whose names stand before lines, in the order in which they first speak
 */
public record ExplainedScript(
        Script script, List<LeftOut> leftOut, List<TakenBracket> brackets, List<Speaker> speakers) {
    /** Copies the lists. */
    public ExplainedScript {
        leftOut = List.copyOf(leftOut);
        brackets = List.copyOf(brackets);
        speakers = List.copyOf(speakers);
    }
}
