package org.bookholder.footage.ffmpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.avutil.AVTimecode;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.junit.jupiter.api.Test;

/** Our names of frames against those of FFmpeg's own counter (libavutil/timecode.h). */
final class TimecodeByFfmpegTest {
    /** A prime, so that every place within a second and a minute is met in a day. */
    private static final int STEP = 997;

    @Test
    void everyRateCountsAsFfmpegDoes() {
        for (Timecode timecode : all()) {
            for (long frame = 0; frame < timecode.framesPerDay(); frame += STEP) {
                assertSame(timecode, frame);
            }
        }
    }

    /** Around each of the first hour's minutes, where numbers are dropped or not. */
    @Test
    void everyMinuteBoundaryCountsAsFfmpegDoes() {
        for (Timecode timecode : all()) {
            int minute = 60 * timecode.rate().countedPerSecond();
            for (long frame = 0; frame < 61L * minute; frame++) {
                long near = frame % minute;
                if (near < 300 || near > minute - 300) {
                    assertSame(timecode, frame);
                }
            }
        }
    }

    private static List<Timecode> all() {
        List<Timecode> all = new ArrayList<>();
        for (FrameRate rate : FrameRate.STANDARD) {
            all.add(new Timecode(rate, false));
            if (rate.canDrop()) {
                all.add(new Timecode(rate, true));
            }
        }
        assertThat(all).hasSize(10);
        return all;
    }

    private static void assertSame(Timecode timecode, long frame) {
        String ours = timecode.label(frame);
        // FFmpeg writes drop-frame with a semicolon too.
        if (!ours.equals(theirs(timecode, frame)) || timecode.frame(ours).orElse(-1L) != frame) {
            assertThat(ours)
                    .as("frame " + frame + " at " + timecode + ", back " + timecode.frame(ours))
                    .isEqualTo(theirs(timecode, frame));
        }
    }

    private static String theirs(Timecode timecode, long frame) {
        try (AVTimecode counter = new AVTimecode();
                AVRational rate = new AVRational();
                BytePointer text = new BytePointer(avutil.AV_TIMECODE_STR_SIZE)) {
            rate.num(timecode.rate().numerator()).den(timecode.rate().denominator());
            int flags = timecode.drop() ? avutil.AV_TIMECODE_FLAG_DROPFRAME : 0;
            assertThat(avutil.av_timecode_init(counter, rate, flags, 0, new Pointer()))
                    .isZero();
            avutil.av_timecode_make_string(counter, text, (int) frame);
            return text.limit(BytePointer.strlen(text)).getString(StandardCharsets.US_ASCII);
        }
    }
}
