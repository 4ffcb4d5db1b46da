package org.bookholder.handoff.captions;

import org.bookholder.timing.StreamTime;

/**
 * How captions are broken and timed.
 *
 * @param width the most characters in a row
 * @param rows the most rows
 * @param shortest the least time that a caption stands, where there is room for it
 * @param longest the most time
 * @param perWord the least time for each of its words, likewise
 * @param perSecond the most characters a second to read, likewise
 * @param gap between two captions there is at least so much time or none
 * @param linger how long a caption may stand after its last word
 */
record CaptionRules(
        int width,
        int rows,
        StreamTime shortest,
        StreamTime longest,
        StreamTime perWord,
        int perSecond,
        StreamTime gap,
        StreamTime linger) {
    /**
     * 42 characters in two rows and 5/6 s to 7 s: Timed Text Guide of the University of Tennessee Libraries. 0.3 s a word
     * and gaps of 1 s: BBC Subtitle Guidelines, which also allow no more than 2 s after the words, and 1.5 s is kept. 20
     * characters a second for adults: a streaming service's guide, as quoted.
     */
    static CaptionRules standard() {
        return new CaptionRules(
                42,
                2,
                StreamTime.ofSeconds(5 / 6.0),
                StreamTime.ofSeconds(7),
                StreamTime.ofSeconds(0.3),
                20,
                StreamTime.ofSeconds(1),
                StreamTime.ofSeconds(1.5));
    }
}
