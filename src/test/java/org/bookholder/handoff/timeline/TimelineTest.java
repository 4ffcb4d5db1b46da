package org.bookholder.handoff.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutItem;
import org.bookholder.cutlist.CutList;
import org.bookholder.cutlist.Gap;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Placement;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.session.FilmChoices;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.api.Test;

final class TimelineTest {
    private static final Timecode FPS_25 = new Timecode(FrameRate.FPS_25, false);
    private static final StreamTime LONG = s(40_000);

    /**
     * The durations and record times of the 25-frame sample in the tests of the OpenTimelineIO adapter for CMX 3600 files
     * (otio-cmx3600-adapter): 161, 200, 86 and 49 frames give 06:11, 14:11, 17:22 and 19:21.
     */
    @Test
    void recordTimesFollowEachOtherAsInThePublishedSample() {
        CutList cut = cut(
                clip(1, s(3600), s(3606.44)),
                clip(2, s(3600), s(3608)),
                clip(3, s(3600), s(3603.44)),
                clip(4, s(3600), s(3601.96)));
        Timeline timeline = TimelineBuilder.build(cut, FPS_25, List.of(camera("A", 0, 0, LONG)), new PunchIn(115, 100));
        assertThat(timeline.events()).extracting(TimelineEvent::frames).containsExactly(161L, 200L, 86L, 49L);
        assertThat(timeline.events().stream().map(e -> FPS_25.label(e.out())))
                .containsExactly("00:00:06:11", "00:00:14:11", "00:00:17:22", "00:00:19:21");
        assertThat(timeline.label(0)).isEqualTo("01:00:00:00");
    }

    @Test
    void tenHoursOfShortClipsAddUpExactly() {
        List<CutItem> items = new ArrayList<>();
        StreamTime length = new StreamTime(3 * 48_000 + 7);
        for (int i = 0; i < 12_000; i++) {
            StreamTime in = new StreamTime(i * length.ticks());
            items.add(clip(i + 1, in, in.plus(length)));
        }
        Timeline timeline = TimelineBuilder.build(
                new CutList(items),
                new Timecode(FrameRate.FPS_29_97, true),
                List.of(camera("A", 0, 0, LONG)),
                new PunchIn(115, 100));
        // Each clip begins where the one before ends in the camera's file too, so the timeline is as long as the file.
        assertThat(timeline.frames()).isEqualTo(FrameRate.FPS_29_97.nearestFrame(12_000 * length.ticks()));
    }

    @Test
    void aClipContinuesInTheNextFileOfACamera() {
        Media first = camera("A", 0, 0, s(10));
        Media second = new Media(
                Media.Kind.CAMERA,
                "B",
                Path.of("B.MP4"),
                9000,
                1000,
                Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_25, false)),
                2,
                new Placement(1, StreamTime.ZERO, -480_000, 0, s(10), s(50), 1),
                1,
                Optional.empty());
        CutList cut = cut(clip(1, s(8), s(12)), clip(2, s(13), s(14)));
        Timeline timeline = TimelineBuilder.build(cut, FPS_25, List.of(first, second), new PunchIn(115, 200));
        assertThat(timeline.events().stream().map(TimelineTest::described))
                .containsExactly("A 200-250 at 0-50 100%", "B 9000-9050 at 50-100 100%", "B 9075-9100 at 100-125 115%");
        assertThat(timeline.when(cut.clips().get(0), s(11))).isEqualTo(s(3));
        assertThat(timeline.when(cut.clips().get(1), s(13.5))).isEqualTo(s(4.5));
    }

    @Test
    void framingAlternatesWithinAShotAndRestartsAfterAGap() {
        CutList cut = cut(
                clip(1, s(1), s(2)),
                clip(2, s(3), s(4)),
                clip(3, s(5), s(6)),
                new Gap(4, s(2), List.of()),
                clip(5, s(8), s(9)),
                clip(6, s(10), s(11)));
        Timeline timeline = TimelineBuilder.build(cut, FPS_25, List.of(camera("A", 0, 0, LONG)), new PunchIn(115, 200));
        assertThat(timeline.events()).extracting(TimelineEvent::framing).containsExactly(100, 115, 100, 100, 100, 115);
    }

    @Test
    void usesTheSessionsRecordingIfTheCameraWasNotRunning() {
        Media camera = camera("A", 0, 0, s(10));
        Media own = new Media(
                Media.Kind.TAKE,
                "TAKE001",
                Path.of("take-001.wav"),
                90_000,
                2500,
                Optional.empty(),
                1,
                new Placement(1, StreamTime.ZERO, 0, 0, StreamTime.ZERO, s(100), 1),
                2,
                Optional.empty());
        Timeline timeline =
                TimelineBuilder.build(cut(clip(1, s(8), s(12))), FPS_25, List.of(camera, own), new PunchIn(115, 200));
        assertThat(timeline.events().stream().map(TimelineTest::described))
                .containsExactly("A 200-250 at 0-50 100%", "TAKE001 90250-90300 at 50-100 100%");
    }

    /** The first of the files that show a moment is used, so a clip changes over when a better camera starts to film. */
    @Test
    void aBetterCameraThatStartsWithinAClipTakesOver() {
        Media better = camera("A", 0, 0, s(10), s(11));
        Media wide = camera("B", 0, 0, s(0), s(100));
        CutList cut = cut(clip(1, s(8), s(12)));
        assertThat(TimelineBuilder.build(cut, FPS_25, List.of(better, wide), new PunchIn(115, 200)).events().stream()
                        .map(TimelineTest::described))
                .containsExactly("B 200-250 at 0-50 100%", "A 250-275 at 50-75 100%", "B 275-300 at 75-100 100%");
        assertThat(TimelineBuilder.build(cut, FPS_25, List.of(wide, better), new PunchIn(115, 200)).events().stream()
                        .map(TimelineTest::described))
                .containsExactly("B 200-300 at 0-100 100%");
    }

    @Test
    void aCameraOfAnotherTakeDoesNotTakeOver() {
        Media other = camera(2, "A", s(10), s(11));
        Media wide = camera("B", 0, 0, s(0), s(100));
        Timeline timeline =
                TimelineBuilder.build(cut(clip(1, s(8), s(12))), FPS_25, List.of(other, wide), new PunchIn(115, 200));
        assertThat(timeline.events().stream().map(TimelineTest::described)).containsExactly("B 200-300 at 0-100 100%");
    }

    /** 100 millionths of an hour are 0.36 s: 9 frames. */
    @Test
    void driftIsFollowed() {
        Timeline timeline = TimelineBuilder.build(
                cut(clip(1, s(3600), s(3601))),
                FPS_25,
                List.of(camera("A", 48_000, 100_000, LONG)),
                new PunchIn(115, 100));
        assertThat(described(timeline.events().get(0))).isEqualTo("A 90034-90059 at 0-25 100%");
    }

    @Test
    void everyLineOfTheScriptIsOnTheTimeline() {
        Timeline timeline = ExampleHandOff.filmed().timeline();
        assertThat(timeline.events().stream().filter(TimelineEvent::opens))
                .extracting(e -> e.item().lines())
                .containsExactly("1", "2", "3", "4", "5", "6");
    }

    private static String described(TimelineEvent event) {
        Source source = event.source().orElseThrow();
        return source.media().reel() + " " + source.in() + "-" + source.out() + " at " + event.in() + "-" + event.out()
                + " " + event.framing() + "%";
    }

    private static CutList cut(CutItem... items) {
        return new CutList(List.of(items));
    }

    private static Clip clip(int line, StreamTime in, StreamTime out) {
        return new Clip(
                1,
                in,
                out,
                in,
                out,
                List.of(complete(1, line, line, 3, in.seconds(), out.seconds())),
                List.of(),
                FilmChoices.Framing.PLANNED,
                Optional.empty());
    }

    private static Media camera(String reel, long start, long drift, StreamTime to) {
        return camera(reel, start, drift, StreamTime.ZERO, to);
    }

    private static Media camera(String reel, long start, long drift, StreamTime from, StreamTime to) {
        return camera(new Placement(1, StreamTime.ZERO, start, drift, from, to, 1), reel);
    }

    private static Media camera(int take, String reel, StreamTime from, StreamTime to) {
        return camera(new Placement(take, StreamTime.ZERO, 0, 0, from, to, 1), reel);
    }

    private static Media camera(Placement placement, String reel) {
        return new Media(
                Media.Kind.CAMERA,
                reel,
                Path.of(reel + ".MP4"),
                0,
                FrameRate.FPS_29_97.frameAt(placement.to().ticks()) * 2,
                Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_25, false)),
                2,
                placement,
                1,
                Optional.empty());
    }
}
