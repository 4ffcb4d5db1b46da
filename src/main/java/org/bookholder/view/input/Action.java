package org.bookholder.view.input;

/** What a presenter can do in the reading window with one key, a clicker or a pedal. */
public enum Action {
    /** Hold the take, or go on. */
    HOLD,
    /** To the start of the line, or of the one before. */
    BACK_LINE,
    /** To the next line. */
    FORWARD_LINE,
    /** To the start of the paragraph, or of the one before. */
    BACK_PARAGRAPH,
    /** One row up, by hand. */
    ROW_UP,
    /** One row down, by hand. */
    ROW_DOWN,
    /** Mark the line just read as a pickup. */
    MARK_PICKUP,
    /** Cut, and roll the next take from the start of the line. */
    NEXT_TAKE,
    /** Cut, and roll the take once more from where it began; just after its beginning, the one before. */
    PREVIOUS_TAKE,
    /** End the take. */
    CUT,
    /** Larger type. */
    LARGER,
    /** Smaller type. */
    SMALLER,
    /** More words to a row. */
    WIDER,
    /** Fewer words to a row. */
    NARROWER,
    /** Swap left and right for a pane of glass. */
    GLASS,
    /** Turn top to bottom. */
    UPSIDE_DOWN,
    /** Choose what moves the text: voice, steady pace, hand. */
    WAY,
    /** Full screen, or a window. */
    FULL_SCREEN,
    /** To the next monitor. */
    MONITOR,
    /** Teach a button what to do. */
    TEACH,
    /** Show or hide all cues at the edges. */
    CUES,
    /** Show or hide the pace. */
    CUE_PACE,
    /** Show or hide what is to be picked up, and the lesson's thread. */
    CUE_PICKUPS,
    /** Show or hide the take's time and the time left. */
    CUE_TIME,
    /** Show or hide when a break is due. */
    CUE_BREAK,
    /** Show or hide what is wrong with the sound. */
    CUE_SOUND,
    /** Show or hide the marks at the eye-line. */
    CUE_FOOTLIGHTS,
    /** Show or put away the pickup list. */
    PICKUPS,
    /** Begin the pickup round, or end it. */
    ROUND,
    /** Show or put away the keys. */
    KEYS,
    /** End the session; asks again while a take is rolling. */
    QUIT
}
