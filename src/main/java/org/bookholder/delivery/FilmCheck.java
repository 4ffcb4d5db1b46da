package org.bookholder.delivery;

import java.util.List;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.sound.LoudnessReading;
import org.bookholder.timing.StreamTime;

/** Checks a film while it is read, in one pass. Confined to one thread. */
public final class FilmCheck implements Film.Viewer {
    /** If a file claims to be longer than it is by more than this, it was cut short. */
    private static final double BROKEN_OFF = 1;

    private final Film film;
    private final Profile profile;
    private final Findings findings = new Findings();
    private final PictureFinder pictures;
    private final FlashFinder flashes;
    private final Optional<SoundFinder> sounds;

    /** Begins a check of {@code film} against {@code profile}. */
    public FilmCheck(Film film, Profile profile) {
        this(film, profile, List.of());
    }

    /** The same of a film that shows stills at these places, which are meant. */
    public FilmCheck(Film film, Profile profile, List<Finding.Place> stills) {
        this.film = film;
        this.profile = profile;
        pictures = new PictureFinder(profile, findings, stills);
        flashes = new FlashFinder(findings);
        sounds = film.sound().filter(sound -> sound.rate() > 0).map(sound -> new SoundFinder(sound, profile, findings));
        new FactsCheck(film, profile, findings).check();
    }

    @Override
    public void picture(StreamTime at, byte[] luma, byte[] colours) {
        pictures.see(at, luma);
        flashes.see(at, colours);
    }

    @Override
    public void sound(StreamTime at, float[][] channels) {
        sounds.ifPresent(finder -> finder.hear(at, channels));
    }

    /**
     * Ends the check.
     *
     * @param pictureEnd when the last picture ends
     * @param soundEnd when the last sound ended
     * @param damaged pieces that could not be decoded
     */
    public Result end(StreamTime pictureEnd, StreamTime soundEnd, long damaged) {
        pictures.end(pictureEnd);
        flashes.end();
        sounds.ifPresent(finder -> finder.end(soundEnd));
        StreamTime end = StreamTime.max(pictureEnd, soundEnd);
        if (film.length().since(end).seconds() > BROKEN_OFF) {
            findings.add(Finding.at(
                    end,
                    end,
                    Grade.MEND,
                    "file",
                    "the film breaks off here, though it says that it lasts " + Times.clock(film.length()),
                    "export or copy it again"));
        }
        if (damaged > 0) {
            findings.add(Finding.ofAll(
                    Grade.MEND, "file", damaged + " pieces of the film are damaged", "export or copy it again"));
        }
        if (film.picture().isPresent() && film.sound().isPresent()) {
            mismatch(pictureEnd, soundEnd);
        }
        Optional<LoudnessReading> loudness = sounds.map(SoundFinder::loudness);
        loudness.ifPresent(this::loudness);
        return new Result(
                film,
                loudness,
                findings.all(),
                sounds.map(SoundFinder::suspected).orElse(List.of()));
    }

    private void mismatch(StreamTime pictureEnd, StreamTime soundEnd) {
        double apart = Math.abs(pictureEnd.seconds() - soundEnd.seconds());
        FactsCheck.check(
                findings,
                profile,
                ProfileSetting.MISMATCH,
                apart,
                pictureEnd.isBefore(soundEnd)
                        ? "the sound goes on for %.2f s after the picture"
                        : "the picture goes on for %.2f s after the sound",
                "trim one to the other");
    }

    private void loudness(LoudnessReading reading) {
        if (Double.isFinite(reading.integrated())) {
            FactsCheck.check(
                    findings,
                    profile,
                    ProfileSetting.LOUDNESS,
                    reading.integrated(),
                    film.sound().filter(s -> s.channels() == 1).isPresent()
                            ? "the loudness is %.1f LUFS (mono, as heard from two speakers)"
                            : "the loudness is %.1f LUFS",
                    "normalise the loudness in the edit");
        }
        FactsCheck.check(
                findings,
                profile,
                ProfileSetting.TRUE_PEAK,
                reading.truePeak(),
                "the true peak is %.1f dBTP",
                "use a limiter that knows true peaks, or lower the sound");
    }

    /**
     * The result of a check.
     *
     * @param film the film's metadata
     * @param loudness how loud it is, if it has sound
     * @param findings the whole film first, then by time
     * @param suspected where the sound may drop out, unless the take that it is from does so, too
     */
    public record Result(
            Film film, Optional<LoudnessReading> loudness, List<Finding> findings, List<Finding.Place> suspected) {
        /** Copies the lists. */
        public Result {
            findings = List.copyOf(findings);
            suspected = List.copyOf(suspected);
        }
    }
}
