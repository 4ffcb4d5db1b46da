package org.bookholder.delivery;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;

/** Checks a film's metadata against a profile. */
final class FactsCheck {
    private final Film film;
    private final Profile profile;
    private final Findings findings;

    FactsCheck(Film film, Profile profile, Findings findings) {
        this.film = film;
        this.profile = profile;
        this.findings = findings;
    }

    void check() {
        word(ProfileSetting.CONTAINER, film.container(), "the file is of the kind %s", "export it as %s");
        range(
                ProfileSetting.SIZE,
                film.bytes() / 1e6,
                "the file has %.0f MB",
                "export with a lower bit rate, or cut it in two");
        range(
                ProfileSetting.LENGTH,
                film.length().seconds() / 60,
                "it lasts %.1f minutes",
                "cut it, or split the lesson");
        profile.pattern(ProfileSetting.NAME)
                .filter(pattern -> !pattern.allows(film.name()))
                .ifPresent(this::name);
        film.picture()
                .ifPresentOrElse(
                        this::picture,
                        () -> mend(
                                ProfileSetting.VIDEO, "it has no picture", "export it with the picture switched on"));
        film.sound()
                .ifPresentOrElse(
                        this::sound,
                        () -> mend(ProfileSetting.AUDIO, "it has no sound", "export it with the sound switched on"));
    }

    private void name(Limit.Matching pattern) {
        List<String> signs = pattern.refused(film.name());
        mend(
                ProfileSetting.NAME,
                "the name does not look like " + pattern.text()
                        + (signs.isEmpty()
                                ? ""
                                : ": " + Limit.and(signs) + (signs.size() == 1 ? " is" : " are") + " not allowed"),
                pattern.instead(film.name()).map(name -> "call it " + name).orElse("rename the file"));
    }

    private void picture(Film.Picture picture) {
        word(ProfileSetting.VIDEO, picture.codec(), "the picture is stored as %s", "export it as %s");
        word(ProfileSetting.PIXELS, picture.pixels(), "pixels are stored as %s", "export it as %s, 4:2:0 with 8 bit");
        word(
                ProfileSetting.SCAN,
                picture.interlaced() ? "interlaced" : "progressive",
                "the picture is %s",
                "export it %s");
        range(
                ProfileSetting.HEIGHT,
                picture.height(),
                "the picture is " + picture.width() + " by %.0f pixels",
                "export it in the size that it is to have; enlarging it later does not help");
        range(
                ProfileSetting.SHAPE,
                picture.shape(),
                "the picture's shape is %.3f to 1",
                "export it in the project's shape");
        word(ProfileSetting.RATE, picture.rate().label(), "it has %s pictures a second", "export it with %s");
        if (picture.variable() && profile.words(ProfileSetting.RATE).isPresent()) {
            findings.add(Finding.ofAll(
                    Grade.LOOK,
                    ProfileSetting.RATE.label(),
                    "the picture rate wavers",
                    "export it with a constant rate; some players lose the sound's place"));
        }
        if (picture.bitRate() > 0) {
            pictureRate(picture.bitRate() / 1000.0);
        }
    }

    /**
     * A still picture is whole with few bits, so the usual lower end only asks to look; one that somebody raised is meant.
     */
    private void pictureRate(double kbps) {
        double usual = ProfileForm.usual()
                .range(ProfileSetting.VIDEO_KBPS)
                .orElseThrow()
                .least();
        Optional<Limit.Between> limit = profile.range(ProfileSetting.VIDEO_KBPS);
        if (limit.filter(asked -> kbps < asked.least() && asked.least() == usual)
                .isPresent()) {
            findings.add(
                    Finding.ofAll(
                            Grade.LOOK,
                            ProfileSetting.VIDEO_KBPS.label(),
                            String.format(
                                    Locale.ROOT,
                                    "the picture has only %.0f kb/s; usual is %s",
                                    kbps,
                                    limit.get().text()),
                            "a picture that hardly changes needs no more; if it looks coarse, export it with a higher bit rate"));
            return;
        }
        range(ProfileSetting.VIDEO_KBPS, kbps, "the picture has %.0f kb/s", "export it with a bit rate within that");
    }

    private void sound(Film.Sound sound) {
        word(ProfileSetting.AUDIO, sound.codec(), "the sound is stored as %s", "export it as %s");
        word(
                ProfileSetting.SAMPLE_RATE,
                Integer.toString(sound.rate()),
                "it has %s samples a second",
                "export it with %s");
        word(
                ProfileSetting.CHANNELS,
                Integer.toString(sound.channels()),
                "the sound has %s channels",
                "export it with %s");
        if (sound.bitRate() > 0) {
            range(
                    ProfileSetting.AUDIO_KBPS,
                    sound.bitRate() / 1000.0,
                    "the sound has %.0f kb/s",
                    "export it with a bit rate within that");
        }
    }

    private void word(ProfileSetting setting, String value, String what, String remedy) {
        profile.words(setting)
                .filter(limit -> !limit.allows(value))
                .ifPresent(limit -> mend(
                        setting,
                        String.format(Locale.ROOT, what, value),
                        String.format(Locale.ROOT, remedy, Limit.or(limit.allowed()))));
    }

    private void range(ProfileSetting setting, double value, String what, String remedy) {
        check(findings, profile, setting, value, what, remedy);
    }

    /** Adds a finding if a number is outside the allowed range. */
    static void check(
            Findings findings, Profile profile, ProfileSetting setting, double value, String what, String remedy) {
        profile.range(setting)
                .filter(limit -> !limit.allows(value))
                .ifPresent(limit -> findings.add(Finding.ofAll(
                        Grade.MEND,
                        setting.label(),
                        String.format(Locale.ROOT, what, value) + "; allowed is " + limit.text(),
                        remedy)));
    }

    private void mend(ProfileSetting setting, String what, String remedy) {
        findings.add(Finding.ofAll(Grade.MEND, setting.label(), what, remedy));
    }
}
