package org.bookholder.view.layout;

/** The faces of type in the reading window. */
public enum Face {
    /** What is to be read aloud. */
    READING,
    /** What is not spoken. */
    DIRECTION,
    /** Figures and words at the edges. */
    FIGURE
}
