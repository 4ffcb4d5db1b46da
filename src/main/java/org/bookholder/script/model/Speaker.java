package org.bookholder.script.model;

/**
 * Somebody whose name stands before lines of a script.
 *
 * @param name the name, as first written
 * @param read whether this speaker's lines are read; otherwise they are directions
 */
public record Speaker(String name, boolean read) {}
