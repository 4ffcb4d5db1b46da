package org.bookholder.script.model;

import java.time.LocalDate;

/**
 * A statement in a script that may become outdated, written as {@code [price](check:2027-03)}.
 *
 * @param text the text as written in the script
 * @param due the day from which it should be checked again; for a month, its first day
 * @param line number of the line that contains it, from 1
 */
public record AgeingFact(String text, LocalDate due, int line) {}
