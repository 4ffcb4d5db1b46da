package org.bookholder.handoff.captions;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/** Captions of timed words as files' texts. */
public final class CaptionFiles {
    private CaptionFiles() {}

    /**
     * As WebVTT (W3C).
     *
     * @param lines the words of each line, in order of time; a caption never holds words of two lines
     */
    public static String webVtt(List<List<TimedWord>> lines) {
        StringBuilder out = new StringBuilder();
        try {
            CaptionsPart.webVtt(captions(lines), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /** The same as SubRip. */
    public static String subRip(List<List<TimedWord>> lines) {
        StringBuilder out = new StringBuilder();
        try {
            CaptionsPart.subRip(captions(lines), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static List<Caption> captions(List<List<TimedWord>> lines) {
        return new CaptionWriter(CaptionRules.standard()).write(lines);
    }
}
