package org.bookholder.view.input;

/** Something a presenter can do in the reading window with one key, a clicker button or a pedal. */
public enum Action {
    /** Hold the take, or continue it. */
    HOLD,
    /** Go to the start of the line; if already there, to the line before. */
    BACK_LINE,
    /** Go to the next line. */
    FORWARD_LINE,
    /** Go to the start of the paragraph; if already there, to the paragraph before. */
    BACK_PARAGRAPH,
    /** Move the text by one row, back. */
    ROW_UP,
    /** Move the text by one row, forward. */
    ROW_DOWN,
    /** Mark the line that was just read as a pickup. */
    MARK_PICKUP,
    /** Take back the last mark. */
    UNDO,
    /** End the take and start the next one at the start of the line. */
    NEXT_TAKE,
    /** End the take and repeat it from where it began; pressed just after a take began, repeat the one before. */
    PREVIOUS_TAKE,
    /** End the take. */
    CUT,
    /** Larger type. */
    LARGER,
    /** Smaller type. */
    SMALLER,
    /** More words in a row. */
    WIDER,
    /** Fewer words in a row. */
    NARROWER,
    /** Mirror left and right, for reading in a pane of glass. */
    GLASS,
    /** Turn the picture upside down. */
    UPSIDE_DOWN,
    /** Choose what moves the text: voice, steady pace, hand. */
    WAY,
    /** Switch between full screen and a window. */
    FULL_SCREEN,
    /** Move to the next monitor. */
    MONITOR,
    /** Assign an action to a button. */
    TEACH,
    /** Show or hide all cues. */
    CUES,
    /** Show or hide the pace. */
    CUE_PACE,
    /** Show or hide the pickups and the lesson's progress line. */
    CUE_PICKUPS,
    /** Show or hide the take's running time and the time left. */
    CUE_TIME,
    /** Show or hide when a break is due. */
    CUE_BREAK,
    /** Show or hide warnings about the sound. */
    CUE_SOUND,
    /** Show or hide the marks at the eye-line. */
    CUE_FOOTLIGHTS,
    /** Show or hide the pickup list. */
    PICKUPS,
    /** Start or end the pickup round. */
    ROUND,
    /** Go on to the next lesson; has to be pressed twice while one is being read. */
    NEXT_LESSON,
    /** Begin or end a break. */
    BREAK,
    /** Take the measured pace as the target, if it is offered. */
    OWN_PACE,
    /** Show or hide the list of keys. */
    KEYS,
    /** End the session, and with it the day's running order; has to be pressed twice while a take is rolling. */
    QUIT
}
