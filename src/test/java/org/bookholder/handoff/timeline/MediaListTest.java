package org.bookholder.handoff.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The files that an editor gets: how they are named, and how their frames are counted. */
final class MediaListTest {
    private static final Timecode FPS_25 = new Timecode(FrameRate.FPS_25, false);

    @Test
    void filesOfCamerasComeFirstThenRecordersThenOurOwn() {
        assertThat(of(file("REC1.WAV", null, "", null), file("CAM1.MP4", FrameRate.FPS_25, "", null)))
                .extracting(Media::reel)
                .containsExactly("CAM1", "REC1", "TAKE001");
    }

    /** CMX 3600 reels: capital letters and digits, eight of them at most. */
    @Test
    void reelsAreShortAndNoTwoAreTheSame() {
        assertThat(of(
                        file("A-MVI_C0001.mp4", FrameRate.FPS_25, "", null),
                        file("B-MVI_C0001.mp4", FrameRate.FPS_25, "", null),
                        file("\u00e9\u00e8.mov", FrameRate.FPS_25, "", null),
                        file("take001.wav", null, "", null)))
                .extracting(Media::reel)
                .containsExactly("VI_C0001", "BMVI_C_2", "REEL", "TAKE001", "TAKE00_2");
    }

    @ParameterizedTest
    @CsvSource({
        // counted as the hand-off counts, then by a camera of twice the rate, then with no label
        "25, 10:00:00:05, 900005",
        "50, 10:00:00:10, 900005",
        "25, '', 0",
        "25, no timecode, 0"
    })
    void aCamerasOwnLabelSaysWhichFrameIsItsFirst(int rate, String label, long first) {
        FrameRate camera = rate == 50 ? FrameRate.FPS_50 : FrameRate.FPS_25;
        assertThat(of(file("A.MP4", camera, label, null)).get(0).firstFrame()).isEqualTo(first);
    }

    @Test
    void withoutALabelTheTimeOfDayInTheFileSaysSo() {
        assertThat(of(file("A.WAV", null, "", 3600.5)).get(0).firstFrame()).isEqualTo(90_013);
    }

    @Test
    void ourOwnRecordingsAreCountedByTheTimeOfDayInTheEditorsZone() {
        Media own = MediaList.of(state(), FPS_25, List.of(), own(ZoneOffset.ofHours(2)))
                .get(0);
        // 11:00:00.5 by the clock there
        assertThat(own.firstFrame()).isEqualTo(11L * 3600 * 25 + 13);
        assertThat(own.frames()).isEqualTo(10 * 25);
        assertThat(own.file()).isEqualTo(Path.of("own.wav"));
        assertThat(own.picture()).isEmpty();
    }

    /** A plain WAV file has no time of day, and editing programs let it begin at zero. */
    @Test
    void ourOwnRecordingsBeginAtZeroIfTheirFilesGiveNoTimeOfDay() {
        MediaList.TakeFiles files = new MediaList.TakeFiles(take -> Path.of("own.wav"), Optional.empty());
        assertThat(MediaList.of(state(), FPS_25, List.of(), files))
                .extracting(Media::firstFrame)
                .containsExactly(0L);
    }

    @Test
    void framesAreCountedAsTheFirstCameraDoes() {
        assertThat(MediaList.usual(List.of())).isEqualTo(FPS_25);
        assertThat(MediaList.usual(List.of(file("R.WAV", null, "", null), file("A.MP4", FrameRate.FPS_50, "", null))))
                .isEqualTo(new Timecode(FrameRate.FPS_50, false));
        assertThat(MediaList.usual(List.of(file("A.MP4", FrameRate.FPS_29_97, "10:00:00;00", null))))
                .isEqualTo(new Timecode(FrameRate.FPS_29_97, true));
        assertThat(MediaList.usual(List.of(file("A.MP4", FrameRate.FPS_29_97, "10:00:00:00", null))))
                .isEqualTo(new Timecode(FrameRate.FPS_29_97, false));
        assertThat(MediaList.usual(List.of(file("A.MP4", FrameRate.FPS_29_97, "", null))))
                .isEqualTo(new Timecode(FrameRate.FPS_29_97, true));
    }

    private static List<Media> of(PlacedFootage... files) {
        return MediaList.of(state(), FPS_25, Arrays.asList(files), own(ZoneOffset.UTC));
    }

    private static MediaList.TakeFiles own(ZoneId zone) {
        return new MediaList.TakeFiles(take -> Path.of("own.wav"), Optional.of(zone));
    }

    /** A session with one take of ten seconds that was rolled half a second after nine. */
    private static SessionState state() {
        Instant nine = Instant.parse("2026-03-02T09:00:00.5Z");
        return Session.apply(
                Session.begin(Scripts.of("Every wheel begins with its hub."), FatigueLimits.defaults()),
                List.of(
                        new SessionEvent.Opened(StreamTime.ZERO, nine, "a", "a.md", "text"),
                        new SessionEvent.TakeStarted(StreamTime.ZERO, 1, nine, "mic", ReadingPosition.START),
                        new SessionEvent.TakeEnded(StreamTime.ofSeconds(10), 1, nine.plusSeconds(10), TakeEnd.CUT)));
    }

    private static PlacedFootage file(
            String name, @Nullable FrameRate rate, String label, @Nullable Double sinceMidnight) {
        StreamTime length = StreamTime.ofSeconds(20);
        return new PlacedFootage(
                new Footage(
                        Path.of(name),
                        length,
                        Optional.ofNullable(rate).map(r -> new Footage.Picture(1920, 1080, r, false)),
                        Optional.of(new Footage.Sound(48_000, 2, "aac")),
                        Optional.of(label).filter(text -> !text.isEmpty()),
                        Optional.ofNullable(sinceMidnight).map(StreamTime::ofSeconds),
                        Optional.empty()),
                List.of(new Placement(1, StreamTime.ZERO, 0, 0, StreamTime.ZERO, length, 1)));
    }
}
