package org.bookholder.view;

import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.TextMeasure;

/** A measure for tests: each character is half an em long. */
public final class Plain implements TextMeasure {
    @Override
    public double advance(String text, Face face) {
        return text.length() * 0.5;
    }
}
