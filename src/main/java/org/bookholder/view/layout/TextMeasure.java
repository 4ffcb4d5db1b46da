package org.bookholder.view.layout;

/** Measures the width of text. */
@FunctionalInterface
public interface TextMeasure {
    /** The advance width of {@code text} in {@code face}, in ems. */
    double advance(String text, Face face);
}
