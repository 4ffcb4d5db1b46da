package org.bookholder.script.source;

import java.util.List;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.Script;

/**
 * A script together with what of its file does not become a line or a direction.
 *
 * @param script the script
 * @param leftOut what is neither spoken nor shown, in the order of the file
 */
public record ExplainedScript(Script script, List<LeftOut> leftOut) {
    /** Copies the list. */
    public ExplainedScript {
        leftOut = List.copyOf(leftOut);
    }
}
