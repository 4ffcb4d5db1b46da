package org.bookholder.delivery;

import java.util.Locale;
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
        word(Setting.CONTAINER, film.container(), "the file is of the kind %s", "export it as %s");
        range(
                Setting.SIZE,
                film.bytes() / 1e6,
                "the file has %.0f MB",
                "export with a lower bit rate, or cut it in two");
        range(Setting.LENGTH, film.length().seconds() / 60, "it lasts %.1f minutes", "cut it, or split the lesson");
        profile.pattern(Setting.NAME)
                .filter(pattern -> !pattern.allows(film.name()))
                .ifPresent(
                        pattern -> mend(Setting.NAME, "the name does not match " + pattern.text(), "rename the file"));
        film.picture()
                .ifPresentOrElse(
                        this::picture,
                        () -> mend(Setting.VIDEO, "it has no picture", "export it with the picture switched on"));
        film.sound()
                .ifPresentOrElse(
                        this::sound,
                        () -> mend(Setting.AUDIO, "it has no sound", "export it with the sound switched on"));
    }

    private void picture(Film.Picture picture) {
        word(Setting.VIDEO, picture.codec(), "the picture is stored as %s", "export it as %s");
        word(Setting.PIXELS, picture.pixels(), "pixels are stored as %s", "export it as %s, 4:2:0 with 8 bit");
        word(Setting.SCAN, picture.interlaced() ? "interlaced" : "progressive", "the picture is %s", "export it %s");
        range(
                Setting.HEIGHT,
                picture.height(),
                "the picture is " + picture.width() + " by %.0f pixels",
                "export it in the size that it is to have; enlarging it later does not help");
        range(Setting.SHAPE, picture.shape(), "the picture's shape is %.3f to 1", "export it in the project's shape");
        word(Setting.RATE, picture.rate().label(), "it has %s pictures a second", "export it with %s");
        if (picture.variable() && profile.words(Setting.RATE).isPresent()) {
            findings.add(Finding.ofAll(
                    Grade.LOOK,
                    Setting.RATE.label(),
                    "the picture rate wavers",
                    "export it with a constant rate; some players lose the sound's place"));
        }
        if (picture.bitRate() > 0) {
            range(
                    Setting.VIDEO_KBPS,
                    picture.bitRate() / 1000.0,
                    "the picture has %.0f kb/s",
                    "export it with a bit rate within that");
        }
    }

    private void sound(Film.Sound sound) {
        word(Setting.AUDIO, sound.codec(), "the sound is stored as %s", "export it as %s");
        word(Setting.SAMPLE_RATE, Integer.toString(sound.rate()), "it has %s samples a second", "export it with %s");
        word(Setting.CHANNELS, Integer.toString(sound.channels()), "the sound has %s channels", "export it with %s");
        if (sound.bitRate() > 0) {
            range(
                    Setting.AUDIO_KBPS,
                    sound.bitRate() / 1000.0,
                    "the sound has %.0f kb/s",
                    "export it with a bit rate within that");
        }
    }

    private void word(Setting setting, String value, String what, String remedy) {
        profile.words(setting)
                .filter(limit -> !limit.allows(value))
                .ifPresent(limit -> mend(
                        setting,
                        String.format(Locale.ROOT, what, value),
                        String.format(Locale.ROOT, remedy, Limit.or(limit.allowed()))));
    }

    private void range(Setting setting, double value, String what, String remedy) {
        check(findings, profile, setting, value, what, remedy);
    }

    /** Adds a finding if a number is outside the allowed range. */
    static void check(Findings findings, Profile profile, Setting setting, double value, String what, String remedy) {
        profile.range(setting)
                .filter(limit -> !limit.allows(value))
                .ifPresent(limit -> findings.add(Finding.ofAll(
                        Grade.MEND,
                        setting.label(),
                        String.format(Locale.ROOT, what, value) + "; allowed is " + limit.text(),
                        remedy)));
    }

    private void mend(Setting setting, String what, String remedy) {
        findings.add(Finding.ofAll(Grade.MEND, setting.label(), what, remedy));
    }
}
