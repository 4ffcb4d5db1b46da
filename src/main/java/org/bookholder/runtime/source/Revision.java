package org.bookholder.runtime.source;

import org.bookholder.script.model.PreparedScript;

/**
 * A text that was saved while its script is being read.
 *
 * @param script the prepared script
 * @param text the text
 */
public record Revision(PreparedScript script, String text) {}
