package org.bookholder.film.sound;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.footage.Interpolator;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/**
 * Mixes the sound of a film: each clip's own, to the sample, faded over into the next; where nothing is said, as behind a card, the
 * sound of the room. One channel, 48,000 samples a second.
 * Confined to one thread.
 */
public final class FilmSound {
    /** Half of a fade from one clip to the next, in samples: 7.5 ms. */
    private static final int HALF_FADE = 360;

    /** How many samples around a clip are needed: half a fade, and what lies between them. */
    private static final int MARGIN = HALF_FADE + Interpolator.REACH + 2;

    /** After so many samples the listener is told. */
    private static final int STEP = 1 << 16;

    private final FilmPlan plan;
    private final Path folder;
    private final Listener listener;

    /** Is told how far the work is, several times a second, and may do other work meanwhile; may end it by throwing. */
    @FunctionalInterface
    public interface Listener {
        /** So much of the work is done, 0 to 1. */
        void mixed(double part) throws ProblemException;
    }

    /**
     * Begins.
     *
     * @param folder where its files go
     * @param listener is told the part of the work that is done, 0 to 1; may end it by throwing
     */
    public FilmSound(FilmPlan plan, Path folder, Listener listener) {
        this.plan = plan;
        this.folder = folder;
        this.listener = listener;
    }

    /**
     * Mixes it into a file of 32-bit samples that are not limited to full scale.
     *
     * @throws ProblemException if a source cannot be read, or there is no room
     */
    public Path mix() throws ProblemException {
        List<Voice> voices = voices(sources());
        Path file = folder.resolve("mix.f32");
        try (SampleFile.Writer out = new SampleFile.Writer(file)) {
            for (int i = 0; i < voices.size(); i++) {
                write(voices, i, out);
            }
        }
        return file;
    }

    /** What is heard of a clip, sample by sample of the film. */
    @FunctionalInterface
    private interface Voice {
        float at(long sample) throws ProblemException;
    }

    private List<Voice> voices(Map<Heard.Source, SoundPieces> sources) throws ProblemException {
        Map<Heard.Source, Optional<RoomTone>> rooms = new HashMap<>();
        List<Voice> voices = new ArrayList<>();
        for (int i = 0; i < plan.clips().size(); i++) {
            FilmClip clip = plan.clips().get(i);
            long start = plan.tickOf(clip.start());
            long length = plan.tickOf(clip.end()) - start;
            if (clip.heard().isPresent()) {
                Heard heard = clip.heard().get();
                ClipVoice voice =
                        new ClipVoice(Objects.requireNonNull(sources.get(heard.source())), heard, start, length);
                voices.add(voice::at);
            } else {
                Optional<Heard.Source> near = near(i);
                if (near.isPresent() && !rooms.containsKey(near.get())) {
                    rooms.put(near.get(), room(near.get(), Objects.requireNonNull(sources.get(near.get()))));
                }
                Optional<RoomTone> room = near.flatMap(file -> rooms.getOrDefault(file, Optional.empty()));
                voices.add(room.<Voice>map(tone -> tone::at).orElse(sample -> 0));
            }
        }
        return voices;
    }

    /** The sound of the clip before a place where there is none, else of the one behind it: there the room is heard. */
    private Optional<Heard.Source> near(int place) {
        List<FilmClip> clips = plan.clips();
        return IntStream.concat(IntStream.iterate(place, i -> i >= 0, i -> i - 1), IntStream.range(place, clips.size()))
                .mapToObj(i -> clips.get(i).heard())
                .flatMap(Optional::stream)
                .map(Heard::source)
                .findFirst();
    }

    private Optional<RoomTone> room(Heard.Source file, SoundPieces sound) throws ProblemException {
        QuietFinder finder = new QuietFinder();
        for (FilmClip clip : plan.clips()) {
            Optional<Heard> heard = clip.heard().filter(h -> h.source().equals(file));
            if (heard.isPresent()) {
                finder.add(clip, heard.get(), sound);
            }
        }
        return RoomTone.of(finder.quiet());
    }

    private Map<Heard.Source, SoundPieces> sources() throws ProblemException {
        Map<Heard.Source, List<SoundPieces.Range>> wanted = new LinkedHashMap<>();
        for (FilmClip clip : plan.clips()) {
            if (clip.heard().isPresent()) {
                Heard heard = clip.heard().get();
                long length = plan.tickOf(clip.end()) - plan.tickOf(clip.start());
                wanted.computeIfAbsent(heard.source(), none -> new ArrayList<>())
                        .add(new SoundPieces.Range(
                                (long) Math.floor(heard.from()) - MARGIN,
                                (long) Math.ceil(heard.from() + length * heard.step()) + MARGIN));
            }
        }
        Map<Heard.Source, SoundPieces> sources = new LinkedHashMap<>();
        for (Map.Entry<Heard.Source, List<SoundPieces.Range>> source : wanted.entrySet()) {
            int before = sources.size();
            double last = source.getValue().stream()
                    .mapToLong(SoundPieces.Range::to)
                    .max()
                    .orElse(1);
            sources.put(
                    source.getKey(),
                    SoundPieces.of(
                            source.getKey(),
                            source.getValue(),
                            folder.resolve("sound-" + before + ".f32"),
                            decoded -> listener.mixed(
                                    0.7 * (before + Math.min(1, decoded / Math.max(1, last))) / wanted.size())));
        }
        return sources;
    }

    private void write(List<Voice> voices, int number, SampleFile.Writer out) throws ProblemException {
        FilmClip clip = plan.clips().get(number);
        long start = plan.tickOf(clip.start());
        long end = plan.tickOf(clip.end());
        Voice voice = voices.get(number);
        Voice before = number == 0 ? sample -> 0 : voices.get(number - 1);
        Voice after = number == voices.size() - 1 ? sample -> 0 : voices.get(number + 1);
        for (long at = start; at < end; at++) {
            float sample = voice.at(at);
            if (at < start + HALF_FADE) {
                sample = faded(before, at, sample, share(at - start));
            } else if (at >= end - HALF_FADE) {
                sample = faded(after, at, sample, share(end - 1 - at));
            }
            out.write(sample);
            if (at % STEP == 0) {
                listener.mixed(0.7 + 0.3 * at / Math.max(1, plan.length().ticks()));
            }
        }
    }

    /** The share of a clip's own sound so many samples inside it: a half at its very end, all of it half a fade inside. */
    private static float share(long inside) {
        return 0.5f + (inside + 0.5f) / (2 * HALF_FADE);
    }

    private static float faded(Voice other, long at, float own, float share) throws ProblemException {
        return share * own + (1 - share) * other.at(at);
    }

    /** Samples a second of the mix. */
    public static int rate() {
        return StreamTime.TICKS_PER_SECOND;
    }
}
