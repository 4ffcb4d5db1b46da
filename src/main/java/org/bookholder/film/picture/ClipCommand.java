package org.bookholder.film.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.film.format.Encoding;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.ffmpeg.FfmpegProgram;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/**
 * The arguments with which FFmpeg's program makes the pictures of one clip, exactly as many as the plan says.
 *
 * @param format the film's format
 * @param quick whether quick scaling is good enough, as for a draft
 * @param font name of the font's file in the folder of the work
 */
record ClipCommand(FilmFormat format, boolean quick, String font) {
    /** Pictures that do not come at a steady rate are read from this many seconds before a clip on, so that one is on show. */
    private static final double LEAD = 3;

    /** The same in a file without an index, where a place that is looked for is missed by some groups of pictures. */
    private static final double ROUGH_LEAD = 8;

    static final String CARD = "0x1c1a17";

    /** The ending of a clip's file, with the dot. */
    String ending() {
        return format.picture() == Encoding.PRORES || format.picture() == Encoding.DNXHD ? ".mov" : ".mp4";
    }

    List<String> of(PicturePiece piece, List<Overlay> overlays, String file) throws ProblemException {
        List<String> filters = new ArrayList<>();
        List<String> command = new ArrayList<>();
        Optional<Shot> shot = piece.shot();
        if (shot.isPresent() && shot.get().kind() == Shot.Kind.STILL) {
            command.addAll(List.of("-threads", "1", "-framerate", format.rate().fraction()));
            command.addAll(FfmpegProgram.still(shot.get().file()));
            filters.addAll(new PictureFilter(shot.get(), format, quick).still());
        } else if (shot.isPresent()) {
            double begins = (double) format.rate().ticksAt(shot.get().first()) / StreamTime.TICKS_PER_SECOND;
            double from = Math.max(0, begins - lead(shot.get()));
            double delay = (double) shot.get().picture().delay() / StreamTime.TICKS_PER_SECOND;
            command.addAll(List.of("-threads", "1", "-ss", String.format(Locale.ROOT, "%.6f", from + delay)));
            command.addAll(FfmpegProgram.input(shot.get().file()));
            filters.addAll(new PictureFilter(shot.get(), format, quick).filters(begins - from));
        } else {
            command.addAll(List.of(
                    "-f",
                    "lavfi",
                    "-i",
                    "color=c=" + CARD + ":s=" + format.width() + "x" + format.height() + ":r="
                            + format.rate().fraction()));
            filters.add("format=" + format.pixels());
        }
        overlays.forEach(overlay -> filters.add(overlay.filter(font)));
        command.addAll(List.of("-map", "0:V:0", "-an", "-sn", "-dn", "-map_metadata", "-1", "-map_chapters", "-1"));
        command.addAll(List.of("-filter_threads", "1", "-vf", String.join(",", filters)));
        command.addAll(List.of("-frames:v", Long.toString(piece.frames()), "-fps_mode", "passthrough"));
        command.addAll(format.picture().arguments());
        if (format.picture().hasBitRate()) {
            command.addAll(List.of("-b:v", format.pictureKbps() + "k"));
        }
        command.addAll(List.of("-pix_fmt", format.pixels(), "-threads", "1"));
        command.add(file);
        return command;
    }

    /** How many seconds before a clip reading begins. */
    private double lead(Shot shot) {
        if (!shot.picture().indexed()) {
            return ROUGH_LEAD;
        }
        // A steady film is entered half a picture early: its times are rounded.
        return shot.steady() ? 0.5 / format.rate().perSecond() : LEAD;
    }
}
