package org.bookholder.handoff.captions;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.timing.StreamTime;

/**
 * Captions of the cut lesson as WebVTT (W3C) and SubRip, its transcript and its chapters: what is said in it, in the script's
 * spelling, with the times at which the words were said.
 */
public final class CaptionsPart implements HandOffPart {
    @Override
    public String name() {
        return "captions";
    }

    @Override
    public String description() {
        return "captions of the cut lesson as WebVTT and SubRip, its transcript and chapters";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return new FilmTexts(
                        handOff.state().script(),
                        CutTranscript.of(handOff),
                        handOff.timeline().rate().length(handOff.timeline().frames()))
                .files(handOff.name());
    }

    static void webVtt(List<Caption> captions, Appendable out) throws IOException {
        out.append("WEBVTT\n");
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
    }

    static void subRip(List<Caption> captions, Appendable out) throws IOException {
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
