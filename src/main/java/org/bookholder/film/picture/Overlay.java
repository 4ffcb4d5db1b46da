package org.bookholder.film.picture;

import java.util.Locale;

/**
 * Text that is burnt into the pictures of a draft.
 *
 * @param file name of the file with the text, in the folder of the work: small letters, digits, hyphens
 * @param place where it stands
 * @param from when it appears, in seconds of the clip
 * @param to when it disappears
 */
record Overlay(String file, Place place, double from, double to) {
    /** Where text stands. */
    enum Place {
        /** Small, in the lower left corner. */
        CORNER,
        /** In the middle of a card. */
        MIDDLE,
        /** Likewise, large. */
        TITLE
    }

    /** The filter of FFmpeg's program that draws it, in the font of that file. */
    String filter(String font) {
        String look = switch (place) {
            case CORNER -> "fontsize=h/20:x=h/30:y=h-th-h/30:box=1:boxcolor=black@0.55:boxborderw=6";
            case MIDDLE -> "fontsize=h/16:x=(w-tw)/2:y=(h-th)/2:line_spacing=8";
            case TITLE -> "fontsize=h/10:x=(w-tw)/2:y=(h-th)/2:line_spacing=12:text_align=C";
        };
        return String.format(
                Locale.ROOT,
                "drawtext=fontfile=%s:textfile=%s:expansion=none:fontcolor=white:%s:enable='gte(t,%.3f)*lt(t,%.3f)'",
                font,
                file,
                look,
                from,
                to);
    }
}
