package org.bookholder.view;

/** A measure for tests: each character is half an em long. */
final class Plain implements TextMeasure {
    @Override
    public double advance(String text, Face face) {
        return text.length() * 0.5;
    }
}
