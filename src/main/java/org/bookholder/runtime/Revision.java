package org.bookholder.runtime;

import org.bookholder.script.PreparedScript;

/**
 * A text that was saved while its script is being read.
 *
 * @param script the script that it makes
 * @param text the text
 */
record Revision(PreparedScript script, String text) {}
