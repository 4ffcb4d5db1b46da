package org.bookholder.script.model;

/**
 * How something that can be said in several ways was said.
 *
 * @param written the script's word, without the punctuation around it, in lower case
 * @param usual its preferred form, words separated by single spaces
 * @param said the form that was said, in the same way
 * @param times how often, at least once
 */
public record SpokenHabit(String written, String usual, String said, int times) {
    /** The same that was said this often. */
    public SpokenHabit said(int often) {
        return new SpokenHabit(written, usual, said, often);
    }
}
