package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.Script;

/**
 * What a reading begins with.
 *
 * @param source the name of what is listened to; empty if nothing is
 * @param rate its samples a second
 * @param model the recogniser's model
 * @param script what is read
 * @param prepared the script as the recogniser listens for it
 */
public record ReadingSetup(Optional<String> source, int rate, Path model, Script script, PreparedScript prepared) {}
