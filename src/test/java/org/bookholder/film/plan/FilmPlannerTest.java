package org.bookholder.film.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutItem;
import org.bookholder.cutlist.Gap;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.film.plan.Track.Kind;
import org.bookholder.follow.model.Attempt;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.Placement;
import org.bookholder.session.FilmChoices;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.Test;

final class FilmPlannerTest {
    private static final PictureFacts PICTURE =
            new PictureFacts(3840, 2160, false, PictureFacts.Light.STANDARD, "bt709", 0, true);
    private static final PunchIn CLOSER = new PunchIn(112, 200);

    @Test
    void eachPieceBeginsAtThePictureNearestToTheCut() {
        // The camera began 1.51 s before the take: 1.00 s of the session is its picture 62.75, so number 63.
        FilmPlan plan = plan(FrameRate.FPS_25, sources(camera("a.mp4", 1.51, 0, 0, 60)), clip(1, 1, 3), clip(2, 5, 8));
        assertThat(plan.clips()).hasSize(2);
        assertThat(plan.clips().get(0).shot().orElseThrow().first()).isEqualTo(63);
        assertThat(plan.clips().get(0).frames()).isEqualTo(50);
        assertThat(plan.clips().get(1).start()).isEqualTo(50);
        assertThat(plan.clips().get(1).shot().orElseThrow().first()).isEqualTo(163);
    }

    @Test
    void theSoundOfTheCameraBeginsExactlyWithItsPicture() {
        FilmPlan plan = plan(FrameRate.FPS_29_97, sources(camera("a.mp4", 2, 40_000, 0, 60)), clip(1, 20, 30));
        FilmClip clip = plan.clips().get(0);
        Heard heard = clip.heard().orElseThrow();
        assertThat(heard.from())
                .isCloseTo(
                        (double) FrameRate.FPS_29_97.ticksAt(
                                clip.shot().orElseThrow().first()),
                        within(0.01));
        assertThat(heard.step()).isEqualTo(1);
    }

    @Test
    void aRecorderGoesBeforeTheCameraAndItsClockIsFollowed() {
        // Both clocks gain on the session's: the camera's by 20 millionths, the recorder's by 100.
        Camera camera = camera("a.mp4", 2, 20_000, 0, 600);
        Placement place = place(5, 100_000, 0, 600);
        FilmPlan plan = plan(
                FrameRate.FPS_25,
                new FilmPlanner.Sources(
                        List.of(camera),
                        List.of(track("a.mp4", Kind.CAMERA, camera.placement()), track("r.wav", Kind.RECORDER, place))),
                clip(1, 500, 560));
        FilmClip clip = plan.clips().get(0);
        Heard heard = clip.heard().orElseThrow();
        assertThat(heard.file()).isEqualTo(Path.of("r.wav"));
        double picture = FrameRate.FPS_25.ticksAt(clip.shot().orElseThrow().first());
        double session = (picture - 2 * 48_000) / (1 + 20e-6);
        assertThat(heard.from()).isCloseTo(5 * 48_000 + session * (1 + 100e-6), within(0.01));
        assertThat(heard.step()).isCloseTo(1 + 80e-6, within(1e-8));
    }

    @Test
    void aRecorderThatEndsInTheMiddleOfAPieceIsNotUsedForIt() {
        Camera camera = camera("a.mp4", 2, 0, 0, 60);
        FilmPlan plan = plan(
                FrameRate.FPS_25,
                new FilmPlanner.Sources(
                        List.of(camera),
                        List.of(
                                track("r.wav", Kind.RECORDER, place(0, 0, 0, 6)),
                                track("a.mp4", Kind.CAMERA, camera.placement()))),
                clip(1, 1, 3),
                clip(2, 5, 8));
        assertThat(plan.clips().stream().map(c -> c.heard().orElseThrow().kind()))
                .containsExactly(Kind.RECORDER, Kind.CAMERA);
    }

    @Test
    void theFramingAlternatesAtJoinsButNotWhereAFileGoesOnInTheNext() {
        FilmPlan plan = plan(
                FrameRate.FPS_25,
                sources(camera("a.mp4", 0, 0, 0, 6.5), camera("b.mp4", -6.5, 0, 6.5, 60)),
                clip(1, 1, 3),
                clip(2, 5, 8),
                clip(3, 10, 12));
        assertThat(plan.clips().stream().map(c -> c.shot().orElseThrow().file().toString()))
                .containsExactly("a.mp4", "a.mp4", "b.mp4", "b.mp4");
        assertThat(plan.clips().stream().map(c -> c.shot().orElseThrow().scale()))
                .containsExactly(100, 112, 112, 100);
    }

    @Test
    void overTwoHoursAndHundredsOfJoinsPictureAndSoundStayTogether() {
        List<CutItem> cut = new ArrayList<>();
        for (int line = 1; line <= 400; line++) {
            cut.add(clip(line, line * 17.77, line * 17.77 + 9.3331));
        }
        Camera camera = camera("a.mp4", 2, 40_000, 0, 7200);
        FilmPlan plan =
                FilmPlanner.plan(pieces(sources(camera), cut), FrameRate.FPS_29_97, CLOSER, FilmPlanner.Wishes.NONE);
        long frames = 0;
        for (FilmClip clip : plan.clips()) {
            assertThat(clip.start()).isEqualTo(frames);
            assertThat(clip.heard().orElseThrow().from())
                    .isCloseTo(
                            (double) FrameRate.FPS_29_97.ticksAt(
                                    clip.shot().orElseThrow().first()),
                            within(0.01));
            frames += clip.frames();
        }
        assertThat(plan.tickOf(frames)).isEqualTo(FrameRate.FPS_29_97.ticksAt(frames));
    }

    @Test
    void anotherCameraShowsALineIfSomeoneWantsItAndTheSoundStays() {
        FilmPlanner.Sources sources = sources(camera("a.mp4", 0, 0, 0, 60), camera("b.mp4", 5, 0, 0, 60));
        FilmPlan plan = plan(
                FrameRate.FPS_25,
                sources,
                clip(1, 1, 3),
                shownBy("b.mp4", clip(2, 5, 8)),
                clip(3, 9, 11),
                clip(4, 12, 14));
        assertThat(plan.clips().stream()
                        .map(clip -> clip.shot().orElseThrow().file() + " "
                                + clip.shot().orElseThrow().scale()))
                .as("where the camera changes no framing has to")
                .containsExactly("a.mp4 100", "b.mp4 100", "a.mp4 100", "a.mp4 112");
        assertThat(plan.clips().get(1).shot().orElseThrow().first()).isEqualTo((5 + 5) * 25);
        assertThat(plan.clips())
                .allMatch(clip -> clip.heard().orElseThrow().file().equals(Path.of("a.mp4")));
        assertThat(plan(FrameRate.FPS_25, sources, shownBy("gone.mp4", clip(1, 1, 3)))
                        .clips()
                        .get(0)
                        .shot()
                        .orElseThrow()
                        .file())
                .as("a camera that does not show it")
                .isEqualTo(Path.of("a.mp4"));
    }

    @Test
    void theCameraChangesAtJoinsIfWishedAndTheSoundIsThatWhichSomeoneWants() {
        Camera first = camera("a.mp4", 0, 0, 0, 60);
        Camera second = camera("b.mp4", 5, 0, 0, 60);
        FilmPlanner.Sources sources = new FilmPlanner.Sources(
                List.of(first, second),
                List.of(
                        track("rec.wav", Kind.RECORDER, place(0, 0, 0, 60)),
                        new Track(Path.of("b.mp4"), Kind.CAMERA, second.placement(), 0, Optional.empty())));
        FilmPlan plan = FilmPlanner.plan(
                pieces(sources, List.of(clip(1, 1, 3), clip(2, 5, 8), clip(3, 9, 11))),
                FrameRate.FPS_25,
                CLOSER,
                new FilmPlanner.Wishes(false, true));
        assertThat(plan.clips().stream()
                        .map(clip -> clip.shot().orElseThrow().file() + " "
                                + clip.shot().orElseThrow().scale()))
                .containsExactly("a.mp4 100", "b.mp4 100", "a.mp4 100");
        assertThat(plan.clips())
                .allMatch(clip -> clip.heard().orElseThrow().file().equals(Path.of("b.mp4")));
    }

    private static Clip shownBy(String camera, Clip clip) {
        return new Clip(
                clip.take(),
                clip.in(),
                clip.out(),
                clip.quietFrom(),
                clip.quietTo(),
                clip.attempts(),
                clip.markers(),
                clip.framing(),
                Optional.of(camera));
    }

    @Test
    void aLineWithoutAnythingToUseIsACard() {
        Gap gap = new Gap(2, s(2), List.of());
        List<CutItem> cut = List.of(clip(1, 1, 3), gap, clip(3, 5, 8));
        FilmPlanner.Sources sources = sources(camera("a.mp4", 0, 0, 0, 60));
        FilmPlan shown = FilmPlanner.plan(pieces(sources, cut), FrameRate.FPS_25, CLOSER, FilmPlanner.Wishes.NONE);
        assertThat(shown.missing()).containsExactly(2);
        assertThat(shown.frames()).isEqualTo(50 + 50 + 75);
    }

    @Test
    void whatNoCameraShowsIsHeardAllTheSame() {
        FilmPlan plan = plan(
                FrameRate.FPS_25,
                new FilmPlanner.Sources(List.of(), List.of(track("take.wav", Kind.TAKE, place(0, 0, 0, 60)))),
                clip(1, 1, 3));
        assertThat(plan.unseen()).containsExactly(1);
        assertThat(plan.clips().get(0).heard().orElseThrow().from()).isEqualTo(48_000);
    }

    @Test
    void picturesThatDoNotComeAtTheFilmsRateAreLookedUpByTheirTime() {
        Camera camera = camera("a.mp4", 0, 0, 0, 60);
        FilmPlan plan = plan(FrameRate.FPS_30, sources(camera), clip(1, 1, 3));
        assertThat(plan.clips().get(0).shot().orElseThrow().steady()).isFalse();
    }

    private static FilmPlan plan(FrameRate rate, FilmPlanner.Sources sources, Clip... clips) {
        return FilmPlanner.plan(pieces(sources, List.of(clips)), rate, CLOSER, FilmPlanner.Wishes.NONE);
    }

    private static List<FilmPlanner.Piece> pieces(FilmPlanner.Sources sources, List<? extends CutItem> items) {
        return items.stream()
                .map(item -> new FilmPlanner.Piece(item, sources, 0))
                .toList();
    }

    private static FilmPlanner.Sources sources(Camera... cameras) {
        return new FilmPlanner.Sources(
                List.of(cameras),
                List.of(cameras).stream()
                        .map(c -> new Track(c.footage().file(), Kind.CAMERA, c.placement(), 2, Optional.empty()))
                        .toList());
    }

    private static Camera camera(String name, double start, long drift, double from, double to) {
        FrameRate rate = drift == 40_000 ? FrameRate.FPS_29_97 : FrameRate.FPS_25;
        Footage footage = new Footage(
                Path.of(name),
                s(to + start + 1),
                Optional.of(new Footage.Picture(3840, 2160, rate, false)),
                Optional.of(new Footage.Sound(48_000, 2, "aac")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        return new Camera(footage, PICTURE, place(start, drift, from, to), FilmChoices.Point.EYES);
    }

    private static Placement place(double start, long drift, double from, double to) {
        return new Placement(1, s(0), Math.round(start * 48_000), drift, s(from), s(to), 1);
    }

    private static Track track(String name, Kind kind, Placement placement) {
        return new Track(Path.of(name), kind, placement, List.of(Kind.values()).indexOf(kind) + 1, Optional.empty());
    }

    private static Clip clip(int line, double in, double out) {
        Attempt attempt = new Attempt(1, line, line, s(in + 0.1), s(out - 0.1), true, List.of(), List.of());
        return new Clip(
                1,
                s(in),
                s(out),
                s(in),
                s(out),
                List.of(attempt),
                List.of(),
                FilmChoices.Framing.PLANNED,
                Optional.empty());
    }
}
