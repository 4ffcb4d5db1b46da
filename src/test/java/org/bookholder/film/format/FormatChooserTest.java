package org.bookholder.film.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.bookholder.delivery.Limit;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.delivery.ProfileSetting;
import org.bookholder.footage.PictureFacts;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.Test;

final class FormatChooserTest {
    private static final PictureFacts UHD = picture(3840, 2160);

    @Test
    void theUsualProfileGets1080pOfA4kCamera() throws ProblemException {
        FilmFormat format = choose(ProfileForm.usual(), UHD).format();
        assertThat(format.container()).isEqualTo("mp4");
        assertThat(format.picture()).isEqualTo(Encoding.H264);
        assertThat(format.width()).isEqualTo(1920);
        assertThat(format.height()).isEqualTo(1080);
        assertThat(format.pictureKbps()).isEqualTo(8000);
        assertThat(format.channels()).isEqualTo(2);
        assertThat(format.loudness()).isEqualTo(-16);
        assertThat(format.truePeak()).isEqualTo(-1);
    }

    @Test
    void aSmallPictureIsNotBlownUpUnlessAskedAndThatIsSaid() throws ProblemException {
        FormatChooser.Chosen small = choose(ProfileForm.usual(), picture(1280, 720));
        assertThat(small.format().height()).isEqualTo(720);
        assertThat(small.remarks()).singleElement().asString().contains("720 of the 1080");
        FormatChooser.Chosen large =
                FormatChooser.of(ProfileForm.usual(), List.of(picture(1280, 720)), FrameRate.FPS_25, s(60), true);
        assertThat(large.format().height()).isEqualTo(1080);
        assertThat(large.remarks()).singleElement().asString().contains("blown up");
    }

    @Test
    void anUprightPictureIsShownBetweenBarsInItsFullHeight() throws ProblemException {
        FormatChooser.Chosen upright = choose(ProfileForm.usual(), picture(1080, 1920));
        assertThat(upright.format().height()).isEqualTo(1080);
        assertThat(upright.remarks()).singleElement().asString().contains("bars");
    }

    @Test
    void aLongFilmGetsFewerBitsSoThatItsFileIsNotTooLarge() throws ProblemException {
        Profile profile = with(ProfileSetting.SIZE, new Limit.Between(Double.NEGATIVE_INFINITY, 300));
        FilmFormat format = FormatChooser.of(profile, List.of(UHD), FrameRate.FPS_25, s(600), false)
                .format();
        assertThat(format.bytesPerSecond() * 600 / 1e6).isLessThan(300).isGreaterThan(250);
    }

    @Test
    void otherKindsOfFilesAreMadeWhereTheProfileAsksForThem() throws ProblemException {
        Profile profile = profile(Map.of(
                ProfileSetting.CONTAINER, words("mov"),
                ProfileSetting.VIDEO, words("prores"),
                ProfileSetting.AUDIO, words("pcm_s24le")));
        FilmFormat format = choose(profile, UHD).format();
        assertThat(format.container()).isEqualTo("mov");
        assertThat(format.pixels()).isEqualTo("yuv422p10le");
        assertThat(format.sound()).isEqualTo(SoundEncoding.PCM_24);
        assertThat(format.height()).isEqualTo(2160);
    }

    @Test
    void aKindOfFileThatNoEncoderHereMakesIsNamed() {
        Profile profile = with(ProfileSetting.VIDEO, words("hevc"));
        assertThatThrownBy(() -> choose(profile, UHD))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("no encoder here")
                .hasMessageContaining("hevc");
    }

    @Test
    void theFilmHasTheCamerasRateOrTheNearestThatTheProfileTakes() {
        assertThat(FormatChooser.rate(ProfileForm.usual(), FrameRate.FPS_29_97)).isEqualTo(FrameRate.FPS_29_97);
        Profile only = with(ProfileSetting.RATE, words("25", "30"));
        assertThat(FormatChooser.rate(only, FrameRate.FPS_29_97)).isEqualTo(FrameRate.FPS_30);
        assertThat(FormatChooser.rate(ProfileForm.usual(), new FrameRate(2997, 125)))
                .isEqualTo(FrameRate.FPS_23_976);
    }

    @Test
    void theLoudnessIsTheMiddleOfTheRangeOrJustInsideOneWithOneEnd() {
        Profile open = with(ProfileSetting.LOUDNESS, new Limit.Between(Double.NEGATIVE_INFINITY, -20));
        assertThat(FormatChooser.draft(open, FrameRate.FPS_25).loudness()).isCloseTo(-20.5, within(1e-9));
    }

    private static FormatChooser.Chosen choose(Profile profile, PictureFacts picture) throws ProblemException {
        return FormatChooser.of(profile, List.of(picture), FrameRate.FPS_25, s(60), false);
    }

    private static Limit words(String... words) {
        return new Limit.OneOf(List.of(words));
    }

    private static Profile with(ProfileSetting setting, Limit limit) {
        Map<ProfileSetting, Limit> limits = new EnumMap<>(ProfileForm.usual().limits());
        limits.put(setting, limit);
        return profile(limits);
    }

    private static Profile profile(Map<ProfileSetting, Limit> limits) {
        return new Profile("a test", limits);
    }

    private static PictureFacts picture(int width, int height) {
        return new PictureFacts(width, height, false, PictureFacts.Light.STANDARD, "bt709", 0, true);
    }
}
