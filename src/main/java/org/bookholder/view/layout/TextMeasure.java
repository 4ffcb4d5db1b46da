package org.bookholder.view.layout;

/** Tells how long text is when set. */
@FunctionalInterface
public interface TextMeasure {
    /** The advance of {@code text} in {@code face}, in ems. */
    double advance(String text, Face face);
}
