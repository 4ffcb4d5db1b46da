package org.bookholder.course.board;

/** How far a lesson has come; each stage includes the ones before it. */
public enum LessonStage {
    /** There is a script. */
    SCRIPT("script"),
    /** There is a day for recording it. */
    PLANNED("planned"),
    /** Some of its lines are recorded. */
    BEGUN("part recorded"),
    /** All lines were read, and some are to be picked up. */
    PICKUPS("pickups open"),
    /** Every line is there. */
    RECORDED("recorded"),
    /** The edit is done. */
    EDITED("edited"),
    /** The file to go out is there, newer than the last recording. */
    EXPORTED("exported"),
    /** The file was checked, and nothing was found. */
    CHECKED("checked");

    private final String label;

    LessonStage(String label) {
        this.label = label;
    }

    /** The word for it. */
    public String label() {
        return label;
    }
}
