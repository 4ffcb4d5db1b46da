package org.bookholder.course.lists;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Something on a list, as the program found it or a person added it.
 *
 * @param id by what it is known: made of the words that it stands for, so that it outlives a lesson's number and file name
 * @param number the number of its lesson; 0 if it belongs to none
 * @param group the title of its lesson, or another heading
 * @param part the kind of thing that it is, where a list has several; otherwise empty
 * @param text what to do or to have
 * @param detail where it belongs and what is known of it; may be empty
 * @param found what the program found of it
 * @param session the session that shows how it looked, if there is one
 */
public record ListItem(
        String id,
        int number,
        String group,
        String part,
        String text,
        String detail,
        Finding found,
        Optional<Path> session) {
    /** What the program found. */
    public enum Finding {
        /** Only a person can tell. */
        UNKNOWN,
        /** It is there. */
        THERE,
        /** It is looked for and not there. */
        MISSING
    }

    /** An item for which no session stands. */
    public ListItem(String id, int number, String group, String part, String text, String detail, Finding found) {
        this(id, number, group, part, text, detail, found, Optional.empty());
    }

    /** The heading above it: the lesson's number and title. */
    public String heading() {
        return number > 0 ? number + " \u00b7 " + group : group;
    }
}
