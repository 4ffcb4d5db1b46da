package org.bookholder.handoff.timeline;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;

/** Lists the files that contain a session's takes: first from cameras, then from recorders, then our own recordings. */
public final class MediaList {
    private static final int REEL = 8;
    private static final long NANOS = 1_000_000_000;

    private final Timecode timecode;
    private final List<Media> pictures = new ArrayList<>();
    private final List<Media> sounds = new ArrayList<>();
    private final Set<String> reels = new HashSet<>();

    private MediaList(Timecode timecode) {
        this.timecode = timecode;
    }

    /**
     * The files of a session.
     *
     * @param footage camera and recorder files with their places, in order of preference
     * @param takes our own recordings
     */
    public static List<Media> of(SessionState state, Timecode timecode, List<PlacedFootage> footage, TakeFiles takes) {
        MediaList list = new MediaList(timecode);
        footage.forEach(list::add);
        state.takes().all().forEach(take -> list.add(take, takes));
        List<Media> all = new ArrayList<>(list.pictures);
        all.addAll(list.sounds);
        return all;
    }

    /**
     * The same files in the order in which they are used: of several that show a take the one to prefer first.
     *
     * @param sources which files are used for each take
     */
    public static List<Media> preferred(List<Media> media, List<TakeSources> sources) {
        List<Media> ranked = new ArrayList<>();
        Map<Media, Integer> pictures = new HashMap<>();
        for (Media one : media) {
            Optional<TakeSources> take = sources.stream()
                    .filter(s -> s.take().number() == one.placement().take())
                    .findFirst();
            List<TakeSources.Source> sounds = take.map(TakeSources::sounds).orElse(List.of());
            int sound = place(one, sounds);
            Media now = one.ranked(
                    sound,
                    sound == sounds.size()
                            ? Optional.empty()
                            : sounds.get(sound).channels());
            ranked.add(now);
            pictures.put(now, place(one, take.map(TakeSources::pictures).orElse(List.of())));
        }
        ranked.sort(Comparator.comparing((Media one) -> one.kind() != Media.Kind.CAMERA)
                .thenComparing(one -> one.kind() == Media.Kind.CAMERA ? pictures.getOrDefault(one, 0) : 0));
        return ranked;
    }

    /** The place of a file in a list; behind its end if it does not stand there. */
    private static int place(Media media, List<TakeSources.Source> sources) {
        for (int i = 0; i < sources.size(); i++) {
            Optional<Path> file = sources.get(i).footage().map(f -> f.footage().file());
            boolean same = media.kind() == Media.Kind.TAKE
                    ? file.isEmpty()
                    : file.map(Path::toAbsolutePath)
                            .map(Path::normalize)
                            .equals(Optional.of(media.file().toAbsolutePath().normalize()));
            if (same) {
                return i;
            }
        }
        return sources.size();
    }

    /**
     * Our own recordings of a session's takes.
     *
     * @param file the file of a take, by its number
     * @param zone time zone of the time of day that each file gives for its first sample; empty if the files give none, so that
     *     their timecode begins at zero
     */
    public record TakeFiles(IntFunction<Path> file, Optional<ZoneId> zone) {}

    /** How to count frames: as the first camera does, otherwise 25 per second. */
    public static Timecode usual(List<PlacedFootage> footage) {
        return footage.stream()
                .map(PlacedFootage::footage)
                .filter(f -> f.picture().isPresent())
                .filter(f -> FrameRate.STANDARD.contains(f.picture().get().rate()))
                .findFirst()
                .map(f -> own(f, f.picture().get().rate()))
                .orElse(new Timecode(FrameRate.FPS_25, false));
    }

    private static Timecode own(Footage footage, FrameRate rate) {
        boolean drop = footage.timecode().map(Timecode::looksDropped).orElse(rate.canDrop());
        return new Timecode(rate, drop && rate.canDrop());
    }

    private void add(PlacedFootage placed) {
        Footage footage = placed.footage();
        String reel = reel(footage.name());
        List<Media> list = footage.picture().isPresent() ? pictures : sounds;
        for (Placement placement : placed.placements()) {
            list.add(new Media(
                    footage.picture().isPresent() ? Media.Kind.CAMERA : Media.Kind.RECORDER,
                    reel,
                    footage.file(),
                    firstFrame(footage),
                    timecode.rate().frameAt(footage.length().ticks()),
                    footage.picture(),
                    footage.sound().map(Footage.Sound::channels).orElse(0),
                    placement.within(footage.length()),
                    footage.picture().isPresent() ? Media.Kind.CAMERA.rank() : Media.Kind.RECORDER.rank(),
                    Optional.empty()));
        }
    }

    /** The camera's own label if we count frames as it does; otherwise the same moment by our count. */
    private long firstFrame(Footage footage) {
        FrameRate rate = footage.picture().map(Footage.Picture::rate).orElse(timecode.rate());
        Optional<Long> frame =
                footage.timecode().flatMap(label -> own(footage, rate).frame(label));
        if (frame.isEmpty() && footage.sinceMidnight().isPresent()) {
            return timecode.rate().nearestFrame(footage.sinceMidnight().get().ticks());
        }
        long first = frame.orElse(0L);
        return rate.equals(timecode.rate()) ? first : timecode.rate().frameAt(rate.ticksAt(first));
    }

    private void add(Take take, TakeFiles files) {
        StreamTime length = take.end().since(take.start());
        sounds.add(new Media(
                Media.Kind.TAKE,
                reel(String.format(Locale.ROOT, "TAKE%03d", take.number())),
                files.file().apply(take.number()),
                files.zone()
                        .map(zone -> timecode.rate().nearestFrame(timeOfDay(take, zone)))
                        .orElse(0L),
                Math.max(1, timecode.rate().nearestFrame(length.ticks())),
                Optional.empty(),
                1,
                Placement.whole(take.number(), take.start(), take.end()),
                Media.Kind.TAKE.rank(),
                Optional.empty()));
    }

    private static long timeOfDay(Take take, ZoneId zone) {
        long nanos = LocalDateTime.ofInstant(take.when(), zone).toLocalTime().toNanoOfDay();
        return nanos / NANOS * StreamTime.TICKS_PER_SECOND + nanos % NANOS * StreamTime.TICKS_PER_SECOND / NANOS;
    }

    /** A name of capital letters, digits and underscores that no other file has. */
    private String reel(String name) {
        String stem =
                name.replaceFirst("\\.[^.]*$", "").toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9_]+", "");
        String base = stem.isEmpty() ? "REEL" : stem;
        // The end of a camera's file name is the part that differs from its other files.
        String reel = base.substring(Math.max(0, base.length() - REEL));
        for (int i = 2; !reels.add(reel); i++) {
            String number = Integer.toString(i);
            reel = base.substring(0, Math.min(base.length(), REEL - 1 - number.length())) + "_" + number;
        }
        return reel;
    }
}
