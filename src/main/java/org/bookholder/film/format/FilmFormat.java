package org.bookholder.film.format;

import org.bookholder.timing.FrameRate;

/**
 * What a film is to be as a file.
 *
 * @param container the kind of file, which is its name's ending, too: mp4, mov or mkv
 * @param picture how its picture is stored
 * @param pixels how a pixel is stored, as FFmpeg calls it
 * @param width in pixels, even
 * @param height likewise
 * @param rate pictures a second
 * @param pictureKbps kilobits a second for the picture
 * @param sound how its sound is stored
 * @param soundKbps kilobits a second for the sound
 * @param sampleRate samples a second
 * @param channels how many channels, all with the same sound
 * @param loudness the loudness that it is to have, in LUFS
 * @param truePeak the highest true peak that it may have, in dBTP
 */
public record FilmFormat(
        String container,
        Encoding picture,
        String pixels,
        int width,
        int height,
        FrameRate rate,
        int pictureKbps,
        SoundEncoding sound,
        int soundKbps,
        int sampleRate,
        int channels,
        double loudness,
        double truePeak) {
    /** About how many bytes it takes for each second. */
    public long bytesPerSecond() {
        int pictures = picture.hasBitRate() ? pictureKbps : (int) (width * height * rate.perSecond() * 4 / 1000);
        int sounds = sound.hasBitRate() ? soundKbps : sampleRate * channels * 24 / 1000;
        return (pictures + sounds) * 125L;
    }
}
