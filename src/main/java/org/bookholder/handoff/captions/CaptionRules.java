package org.bookholder.handoff.captions;

import org.bookholder.timing.StreamTime;

/**
 * How captions are broken and timed.
 *
 * @param width the most characters in a row
 * @param rows the most rows
 * @param shortest the shortest time to show a caption, if there is room for it
 * @param longest the longest time to show one
 * @param perWord the shortest time for each of its words, likewise
 * @param perSecond the most characters to read per second, likewise
 * @param gap the shortest gap between two captions; they may also follow without any gap
 * @param early how much before its first word a caption may appear, if it could not be read otherwise
 * @param linger how long a caption may stay after its last word
 */
record CaptionRules(
        int width,
        int rows,
        StreamTime shortest,
        StreamTime longest,
        StreamTime perWord,
        int perSecond,
        StreamTime gap,
        StreamTime early,
        StreamTime linger) {
    /**
     * 42 characters in two rows and 5/6 s to 7 s: Timed Text Guide of the University of Tennessee Libraries. 0.3 s per
     * word and gaps of 1 s: BBC Subtitle Guidelines, which also allow at most 2 s after the words (we use 1.5 s). 17
     * characters per second: a streaming service's guide, as quoted, for children; many viewers of a lesson read a second
     * language. Half a second early: a captioning guide for research projects (enhancingaudiodescription.com).
     */
    static CaptionRules standard() {
        return new CaptionRules(
                42,
                2,
                StreamTime.ofSeconds(5 / 6.0),
                StreamTime.ofSeconds(7),
                StreamTime.ofSeconds(0.3),
                17,
                StreamTime.ofSeconds(1),
                StreamTime.ofSeconds(0.5),
                StreamTime.ofSeconds(1.5));
    }
}
