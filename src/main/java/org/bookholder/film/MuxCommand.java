package org.bookholder.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.timing.FrameRate;

/**
 * The arguments with which FFmpeg's program puts pictures, sound, captions and chapters into one file. All names lie in the
 * folder of the work.
 *
 * @param clips the list of the clips' files, in the form that FFmpeg reads
 * @param sound the arguments that name the sound
 * @param captions the captions as SubRip; empty if nothing is said
 * @param notes title and chapters
 * @param language the captions' language, as MP4 names it
 * @param seconds how long it is: what comes later in sound and captions is left out
 */
record MuxCommand(
        FilmFormat format,
        String clips,
        List<String> sound,
        String captions,
        String notes,
        String language,
        double seconds) {
    List<String> to(String file) {
        List<String> command = new ArrayList<>(List.of("-f", "concat", "-safe", "0", "-i", clips));
        command.addAll(sound);
        command.addAll(List.of("-f", "ffmetadata", "-i", notes));
        if (!captions.isEmpty()) {
            command.addAll(List.of("-f", "srt", "-i", captions));
        }
        command.addAll(List.of("-map", "0:v", "-map", "1:a", "-map_metadata", "2", "-map_chapters", "2"));
        command.addAll(List.of("-c:v", "copy", "-bsf:v", evenTimes(format.rate())));
        sound(command);
        if (!captions.isEmpty()) {
            command.addAll(List.of("-map", "3:s", "-c:s", format.container().equals("mkv") ? "subrip" : "mov_text"));
            command.addAll(List.of("-metadata:s:s:0", "language=" + language, "-disposition:s:0", "0"));
        }
        if (!format.container().equals("mkv")) {
            command.addAll(List.of("-movflags", "+faststart"));
        }
        command.addAll(List.of("-t", String.format(Locale.ROOT, "%.6f", seconds)));
        command.add(file);
        return command;
    }

    /** The clips' own times are rounded where one ends and the next begins: each picture gets the time of its number instead. */
    private static String evenTimes(FrameRate rate) {
        return String.format(Locale.ROOT, "setts=ts=round(N*%d/(%d*TB))", rate.denominator(), rate.numerator());
    }

    private void sound(List<String> command) {
        // Named channel by channel: to make two of one, FFmpeg would lower it by 3 dB.
        command.addAll(List.of(
                "-af",
                format.channels() == 1 ? "anull" : "pan=stereo|c0=c0|c1=c0",
                "-ar",
                Integer.toString(format.sampleRate()),
                "-c:a",
                format.sound().encoder()));
        if (format.sound().hasBitRate()) {
            command.addAll(List.of("-b:a", format.soundKbps() + "k"));
        }
    }
}
