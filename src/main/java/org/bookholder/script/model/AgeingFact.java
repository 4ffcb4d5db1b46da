package org.bookholder.script.model;

import java.time.LocalDate;

/**
 * Something in a script that will not stay true, written as {@code [price](check:2027-03)}.
 *
 * @param text as it stands in the script
 * @param due from when on it is to be looked at again: that day, or the first of that month
 * @param line number of the line it stands in, from 1
 */
public record AgeingFact(String text, LocalDate due, int line) {}
