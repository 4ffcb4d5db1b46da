package org.bookholder.speech.wav;

import java.util.List;

/**
 * What a WAV file says about its samples.
 *
 * @param rate samples per second
 * @param channels samples in a frame
 * @param format how a sample is written
 * @param dataStart offset of the first frame in the file, in bytes
 * @param frames whole frames in the file
 * @param warnings what had to be guessed or left out, as shown to the user
 */
record WavDescription(int rate, int channels, SampleFormat format, long dataStart, long frames, List<String> warnings) {
    /** Copies the list. */
    WavDescription {
        warnings = List.copyOf(warnings);
    }

    /** Bytes that one frame takes. */
    int frameBytes() {
        return channels * format.bytes();
    }
}
