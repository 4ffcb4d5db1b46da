package org.bookholder.course.lists;

import java.util.Arrays;
import java.util.List;

/** The lists of a course. */
public enum ListKind {
    /** What the scripts' directions ask to show, and the pictures and clips that they name. */
    SHOTS(
            "shots",
            "Shots and covers",
            "What your scripts' directions ask to show, and the pictures and clips that they name."),
    /** What to look at before the first take of a day; its ticks hold for that day. */
    SET_UP(
            "set-up",
            "Set-up for the day",
            "What to look at before the first take (common practice). Ticks hold for the day; remarks stay."),
    /** What has to be there before a course is offered. */
    LAUNCH(
            "launch",
            "What belongs to a launch",
            "Files are looked for in the course's folder exports; the rest only you can tell.");

    private final String label;
    private final String title;
    private final String about;

    ListKind(String label, String title, String about) {
        this.label = label;
        this.title = title;
        this.about = about;
    }

    /** Its name in commands and files. */
    public String label() {
        return label;
    }

    /** Its name for people. */
    public String title() {
        return title;
    }

    /** Where its items come from, one or two sentences. */
    public String about() {
        return about;
    }

    /** All names. */
    public static List<String> labels() {
        return Arrays.stream(values()).map(ListKind::label).toList();
    }
}
