package org.bookholder.view.layout;

/** The typefaces of the reading window. */
public enum Face {
    /** Text to be read aloud. */
    READING,
    /** Directions, which are not spoken. */
    DIRECTION,
    /** Figures and words at the edges. */
    FIGURE
}
