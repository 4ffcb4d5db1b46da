package org.bookholder.course.board;

/** How far a lesson has come; each stage includes the ones before it. */
public enum LessonStage {
    /** There is a script. */
    SCRIPT("script"),
    /** There is a day for recording it. */
    PLANNED("planned"),
    /** Some of its lines are recorded. */
    BEGUN("partly recorded"),
    /** All lines were read, and some must be picked up. */
    PICKUPS("pickups open"),
    /** Every line was recorded clean. */
    RECORDED("recorded"),
    /** The edit is done. */
    EDITED("edited"),
    /** There is an exported file, newer than the last recording. */
    EXPORTED("exported"),
    /** The exported file was checked, and no fault was found. */
    CHECKED("checked");

    private final String label;

    LessonStage(String label) {
        this.label = label;
    }

    /** The word that people see. */
    public String label() {
        return label;
    }
}
