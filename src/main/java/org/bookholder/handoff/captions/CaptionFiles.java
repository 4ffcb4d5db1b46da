package org.bookholder.handoff.captions;

import java.util.List;
import java.util.Locale;
import org.bookholder.timing.StreamTime;

/** Captions as the texts of files. */
final class CaptionFiles {
    private CaptionFiles() {}

    /** As WebVTT (W3C). */
    static String webVtt(List<Caption> captions) {
        StringBuilder out = new StringBuilder("WEBVTT\n");
        long last = 0;
        for (Caption caption : captions) {
            long start = Math.max(last, millis(caption.start()));
            long end = Math.max(start + 1, millis(caption.end()));
            out.append('\n')
                    .append(time(start, '.'))
                    .append(" --> ")
                    .append(time(end, '.'))
                    .append('\n');
            for (String row : caption.rows()) {
                out.append(escaped(row)).append('\n');
            }
            last = start;
        }
        return out.toString();
    }

    /** As SubRip. */
    static String subRip(List<Caption> captions) {
        StringBuilder out = new StringBuilder();
        int number = 1;
        long last = 0;
        for (Caption caption : captions) {
            long start = Math.max(last, millis(caption.start()));
            long end = Math.max(start + 1, millis(caption.end()));
            out.append(Integer.toString(number++)).append("\r\n");
            out.append(time(start, ',')).append(" --> ").append(time(end, ',')).append("\r\n");
            for (String row : caption.rows()) {
                out.append(row).append("\r\n");
            }
            out.append("\r\n");
            last = start;
        }
        return out.toString();
    }

    /**
     * Escapes everything that WebVTT would read as markup; the arrow that separates its times then cannot occur either.
     */
    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static long millis(StreamTime time) {
        return (time.ticks() + 24) / 48;
    }

    private static String time(long millis, char point) {
        return String.format(
                Locale.ROOT,
                "%02d:%02d:%02d%c%03d",
                millis / 3_600_000,
                millis / 60_000 % 60,
                millis / 1000 % 60,
                point,
                millis % 1000);
    }
}
