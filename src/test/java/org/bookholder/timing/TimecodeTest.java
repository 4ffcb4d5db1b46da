package org.bookholder.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Tables from the tests of two libraries that editors' tools are built on, OpenTimelineIO
 * (tests/test_opentime.py) and eoyilmaz/timecode, and from the published descriptions of drop-frame by Andrew Duncan
 * (andrewduncan.ws) and David Heidelberger (2010). All on a count of frames from 0.
 */
final class TimecodeTest {
    private static final Timecode DROP_30 = new Timecode(FrameRate.FPS_29_97, true);
    private static final Timecode PLAIN_30 = new Timecode(FrameRate.FPS_29_97, false);
    private static final Timecode DROP_60 = new Timecode(FrameRate.FPS_59_94, true);

    @ParameterizedTest
    @CsvSource({
        "0, 00:00:00;00, 00:00:00:00",
        "1799, 00:00:59;29, 00:00:59:29",
        "1800, 00:01:00;02, 00:01:00:00",
        "10789, 00:05:59;29, 00:05:59:19",
        "10790, 00:06:00;02, 00:05:59:20",
        "17981, 00:09:59;29, 00:09:59:11",
        "17982, 00:10:00;00, 00:09:59:12",
        "17983, 00:10:00;01, 00:09:59:13",
        "17984, 00:10:00;02, 00:09:59:14",
        "107892, 01:00:00;00, 00:59:56:12",
        "107957, 01:00:02;05, 00:59:58:17",
        "1084319, 10:03:00;05, 10:02:23:29",
        "2589407, 23:59:59;29, 23:58:33:17",
        "2589408, 00:00:00;00, 23:58:33:18",
    })
    void countsAt29_97AsThePublishedTablesDo(long frame, String drop, String plain) {
        assertThat(DROP_30.label(frame)).isEqualTo(drop);
        assertThat(PLAIN_30.label(frame)).isEqualTo(plain);
        assertThat(DROP_30.frame(drop)).contains(frame % DROP_30.framesPerDay());
        assertThat(PLAIN_30.frame(plain)).contains(frame);
    }

    @ParameterizedTest
    @CsvSource({
        "3600, 00:01:00;04",
        "35964, 00:10:00;00",
        "1084319, 05:01:30;03",
        "215784, 01:00:00;00",
    })
    void dropsFourNumbersAt59_94(long frame, String label) {
        assertThat(DROP_60.label(frame)).isEqualTo(label);
        assertThat(DROP_60.frame(label)).contains(frame);
    }

    @ParameterizedTest
    @CsvSource({"13:36:59;29, 13:37:00;02", "13:39:59;29, 13:40:00;00"})
    void goesFromOneMinuteToTheNextAt29_97(String before, String after) {
        assertThat(DROP_30.label(DROP_30.frame(before).orElseThrow() + 1)).isEqualTo(after);
    }

    @Test
    void goesFromOneMinuteToTheNextAt59_94() {
        assertThat(DROP_60.label(DROP_60.frame("13:36:59;59").orElseThrow() + 1))
                .isEqualTo("13:37:00;04");
    }

    @Test
    void hasTheFramesOfADayThatTheTablesHave() {
        assertThat(DROP_30.framesPerDay()).isEqualTo(2_589_408);
        assertThat(PLAIN_30.framesPerDay()).isEqualTo(2_592_000);
        assertThat(new Timecode(FrameRate.FPS_25, false).framesPerDay()).isEqualTo(2_160_000);
    }

    @ParameterizedTest
    @CsvSource({"23.976, 00:00:01:00", "24, 00:00:01:00"})
    void counts24NumbersASecondAt23_976(String rate, String label) {
        assertThat(new Timecode(FrameRate.named(rate).orElseThrow(), false).label(24))
                .isEqualTo(label);
    }

    @ParameterizedTest
    @CsvSource({"00:01:00;00", "00:01:00;01", "00:00:00;30", "24:00:00;00", "00:60:00;00", "1:00:00;00", "x"})
    void hasNoFrameForASkippedOrInvalidLabel(String label) {
        assertThat(DROP_30.frame(label)).isEmpty();
    }

    @Test
    void refusesDropFrameWhereThereIsNone() {
        assertThatThrownBy(() -> new Timecode(FrameRate.FPS_23_976, true))
                .hasMessage("drop-frame (23.976) must be at 29.97 or 59.94");
        assertThatThrownBy(() -> new Timecode(FrameRate.FPS_25, true)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> PLAIN_30.label(-1)).isInstanceOf(IllegalArgumentException.class);
    }
}
