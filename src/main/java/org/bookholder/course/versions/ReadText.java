package org.bookholder.course.versions;

import java.time.Instant;
import org.bookholder.script.model.Script;

/**
 * A text of a lesson, as it was read in a session or stands in its file.
 *
 * @param when since when it is known
 * @param script the text
 */
public record ReadText(Instant when, Script script) {}
