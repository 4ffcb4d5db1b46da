package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.Script;

/**
 * What a reading starts with.
 *
 * @param source the name of the source of sound; empty if there is none
 * @param rate its sample rate in Hz
 * @param model the recogniser's model
 * @param script the script to be read
 * @param prepared the script as prepared for the recogniser
 */
public record ReadingSetup(Optional<String> source, int rate, Path model, Script script, PreparedScript prepared) {}
