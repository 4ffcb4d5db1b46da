package org.bookholder.film.format;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.bookholder.delivery.Limit;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileSetting;
import org.bookholder.footage.PictureFacts;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/** Chooses what a film is to be as a file, so that it passes the check against a delivery profile. */
public final class FormatChooser {
    private static final double WIDE = 16 / 9.0;
    private static final double USUAL_LOUDNESS = -16;
    private static final double USUAL_PEAK = -1;
    private static final int DRAFT_HEIGHT = 360;
    private static final int USUAL_SOUND_KBPS = 192;

    /** Enough for a person who talks (common practice: 8 Mb/s for 1080p). */
    private static final double KBPS_AT_FULL_HD = 8000;

    private static final double FULL_HD_PIXELS = 1920 * 1080 * 25.0;

    private final Profile profile;
    private final List<String> remarks = new ArrayList<>();

    private FormatChooser(Profile profile) {
        this.profile = profile;
    }

    /**
     * What was chosen.
     *
     * @param format the format
     * @param remarks what a person should know about it, one sentence each
     */
    public record Chosen(FilmFormat format, List<String> remarks) {
        /** Copies the list. */
        public Chosen {
            remarks = List.copyOf(remarks);
        }
    }

    /** The rate of a film from cameras of that rate: the same if the profile takes it, otherwise the nearest that it takes. */
    public static FrameRate rate(Profile profile, FrameRate camera) {
        List<FrameRate> taken = words(profile, ProfileSetting.RATE).stream()
                .flatMap(name -> FrameRate.named(name).stream())
                .toList();
        List<FrameRate> possible = taken.isEmpty() ? FrameRate.STANDARD : taken;
        return possible.stream()
                .min(Comparator.comparingDouble(rate -> Math.abs(Math.log(rate.perSecond() / camera.perSecond()))))
                .orElse(camera);
    }

    /**
     * The format of a final film.
     *
     * @param pictures the cameras' pictures; none if nothing is seen
     * @param length about how long the film will be
     * @param enlarge whether a picture may be blown up to the size that the profile asks for
     * @throws ProblemException if the profile asks for a kind of file that cannot be made here
     */
    public static Chosen of(
            Profile profile, List<PictureFacts> pictures, FrameRate rate, StreamTime length, boolean enlarge)
            throws ProblemException {
        FormatChooser chooser = new FormatChooser(profile);
        Kind kind = chooser.kind();
        double shape = chooser.shape();
        int height = chooser.height(pictures, shape, enlarge);
        int width = even(height * shape);
        chooser.sayBars(pictures, shape);
        int soundKbps = chooser.soundKbps(kind.sound());
        FilmFormat format = new FilmFormat(
                kind.container(),
                kind.picture(),
                kind.pixels(),
                width,
                height,
                rate,
                chooser.pictureKbps(width, height, rate, length, soundKbps),
                kind.sound(),
                soundKbps,
                chooser.number(ProfileSetting.SAMPLE_RATE, StreamTime.TICKS_PER_SECOND),
                chooser.number(ProfileSetting.CHANNELS, 2),
                chooser.loudness(),
                chooser.truePeak());
        return new Chosen(format, chooser.remarks);
    }

    /** The format of a draft: small, and quick to make. */
    public static FilmFormat draft(Profile profile, FrameRate rate) {
        FormatChooser chooser = new FormatChooser(profile);
        return new FilmFormat(
                "mp4",
                Encoding.H264,
                "yuv420p",
                even(DRAFT_HEIGHT * chooser.shape()),
                DRAFT_HEIGHT,
                rate,
                900,
                SoundEncoding.AAC,
                128,
                StreamTime.TICKS_PER_SECOND,
                2,
                chooser.loudness(),
                chooser.truePeak());
    }

    /** The kind of file, and how picture and sound are stored in it. */
    private record Kind(String container, Encoding picture, String pixels, SoundEncoding sound) {}

    private Kind kind() throws ProblemException {
        List<String> containers = words(profile, ProfileSetting.CONTAINER);
        for (Encoding picture : ordered(Encoding.values(), ProfileSetting.VIDEO, Encoding::label)) {
            Optional<String> pixels = picture.pixels().stream()
                    .filter(p -> allows(ProfileSetting.PIXELS, p))
                    .findFirst();
            for (SoundEncoding sound : ordered(SoundEncoding.values(), ProfileSetting.AUDIO, SoundEncoding::label)) {
                Optional<String> container = (containers.isEmpty() ? picture.containers() : containers)
                        .stream()
                                .filter(c -> picture.containers().contains(c)
                                        && sound.containers().contains(c))
                                .findFirst();
                if (container.isPresent() && pixels.isPresent() && allows(ProfileSetting.SCAN, "progressive")) {
                    return new Kind(container.get(), picture, pixels.get(), sound);
                }
            }
        }
        throw new ProblemException(
                "no encoder here makes a film of that kind (" + asked() + ")",
                profile.name(),
                "let the profile take mp4 with h264, yuv420p and aac, or hand off to an editing program");
    }

    private String asked() {
        List<String> asked = new ArrayList<>();
        for (ProfileSetting setting : List.of(
                ProfileSetting.CONTAINER,
                ProfileSetting.VIDEO,
                ProfileSetting.PIXELS,
                ProfileSetting.SCAN,
                ProfileSetting.AUDIO)) {
            List<String> words = words(profile, setting);
            if (!words.isEmpty()) {
                asked.add(setting.label() + " " + Limit.or(words));
            }
        }
        return String.join(", ", asked);
    }

    private int height(List<PictureFacts> pictures, double shape, boolean enlarge) {
        Limit.Between asked = range(ProfileSetting.HEIGHT).orElse(new Limit.Between(1, Double.POSITIVE_INFINITY));
        double there = pictures.stream()
                .mapToDouble(p -> FrameFit.of(p, shape).height())
                .min()
                .orElse(Math.max(asked.least(), 1080));
        boolean open = asked.least() < 2 || Double.isInfinite(asked.least());
        double wanted = open ? Math.min(there, asked.most()) : asked.least();
        if (wanted <= there + 0.5) {
            return even(wanted);
        }
        String small = "The camera's picture fills only " + even(there) + " of the " + even(wanted)
                + " rows that the profile asks for";
        remarks.add(
                enlarge
                        ? small + "; it was blown up"
                        : small + "; the film has " + even(there) + " rows. It is blown up only if you ask for it");
        return even(enlarge ? wanted : there);
    }

    private void sayBars(List<PictureFacts> pictures, double shape) {
        if (pictures.stream().anyMatch(p -> FrameFit.of(p, shape).barred())) {
            remarks.add("The camera's picture has another shape than the film and is shown whole, between two bars");
        }
        if (pictures.stream().anyMatch(p -> p.light() != PictureFacts.Light.STANDARD)) {
            remarks.add(
                    "The camera's picture is of high dynamic range; its brightness was brought down to the usual one");
        }
    }

    private int pictureKbps(int width, int height, FrameRate rate, StreamTime length, int soundKbps) {
        double share = width * height * rate.perSecond() / FULL_HD_PIXELS;
        double usual = KBPS_AT_FULL_HD * Math.pow(share, 0.75);
        Limit.Between asked = range(ProfileSetting.VIDEO_KBPS).orElse(new Limit.Between(0, Double.POSITIVE_INFINITY));
        double within = Math.min(Math.max(usual, 1.2 * asked.least()), 0.85 * asked.most());
        double megabytes = range(ProfileSetting.SIZE).map(Limit.Between::most).orElse(Double.POSITIVE_INFINITY);
        double room = megabytes * 8000 * 0.95 / Math.max(1, length.seconds()) - soundKbps;
        return (int) Math.round(Math.max(100, Math.min(within, room)));
    }

    private int soundKbps(SoundEncoding sound) {
        Limit.Between asked = range(ProfileSetting.AUDIO_KBPS).orElse(new Limit.Between(0, Double.POSITIVE_INFINITY));
        double wanted = Math.min(Math.max(USUAL_SOUND_KBPS, 1.1 * asked.least()), asked.most());
        return (int) Math.min(wanted, sound.mostKbps());
    }

    private double shape() {
        Limit.Between asked = range(ProfileSetting.SHAPE).orElse(new Limit.Between(WIDE, WIDE));
        if (asked.least() <= WIDE && WIDE <= asked.most()) {
            return WIDE;
        }
        return Double.isInfinite(asked.most()) || Double.isInfinite(asked.least())
                ? Double.isInfinite(asked.most()) ? asked.least() : asked.most()
                : (asked.least() + asked.most()) / 2;
    }

    private double loudness() {
        return range(ProfileSetting.LOUDNESS).map(FormatChooser::middle).orElse(USUAL_LOUDNESS);
    }

    /** The middle of a range; half a unit inside one with a single end. */
    private static double middle(Limit.Between range) {
        if (Double.isInfinite(range.least())) {
            return Math.min(USUAL_LOUDNESS, range.most() - 0.5);
        }
        return Double.isInfinite(range.most())
                ? Math.max(USUAL_LOUDNESS, range.least() + 0.5)
                : (range.least() + range.most()) / 2;
    }

    private double truePeak() {
        return range(ProfileSetting.TRUE_PEAK)
                .map(Limit.Between::most)
                .filter(Double::isFinite)
                .orElse(USUAL_PEAK);
    }

    private int number(ProfileSetting setting, int usual) {
        List<Integer> taken = words(profile, setting).stream()
                .filter(word -> word.matches("\\d{1,6}"))
                .map(Integer::parseInt)
                .toList();
        return taken.isEmpty() || taken.contains(usual) ? usual : taken.get(0);
    }

    /** Those that the profile takes, in its order; all if it does not say. */
    private <T> List<T> ordered(T[] all, ProfileSetting setting, Function<T, String> label) {
        List<String> taken = words(profile, setting);
        List<T> possible = new ArrayList<>(List.of(all));
        if (!taken.isEmpty()) {
            possible.removeIf(each -> !taken.contains(label.apply(each)));
            ToIntFunction<T> place = each -> taken.indexOf(label.apply(each));
            possible.sort(Comparator.comparingInt(place));
        }
        return possible;
    }

    private boolean allows(ProfileSetting setting, String word) {
        List<String> taken = words(profile, setting);
        return taken.isEmpty() || taken.contains(word);
    }

    private static List<String> words(Profile profile, ProfileSetting setting) {
        return profile.limits().get(setting) instanceof Limit.OneOf words ? words.allowed() : List.of();
    }

    private Optional<Limit.Between> range(ProfileSetting setting) {
        return profile.limits().get(setting) instanceof Limit.Between range ? Optional.of(range) : Optional.empty();
    }

    private static int even(double size) {
        return Math.max(2, 2 * (int) Math.round(size / 2));
    }
}
