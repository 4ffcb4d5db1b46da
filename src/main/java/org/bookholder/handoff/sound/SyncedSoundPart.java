package org.bookholder.handoff.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Interpolator;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Take;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * The sound of each recorder, channel by channel, and of our own recordings, once for each camera file: as long as that
 * file, with its timecode, and with its clock, so that it can be laid under the picture as it is.
 */
public final class SyncedSoundPart implements HandOffPart {
    private static final int RATE = 48_000;

    private static final StreamTime SOME = StreamTime.ofSeconds(0.1);

    @Override
    public String name() {
        return "sync";
    }

    @Override
    public String description() {
        return "the recorders' sound and the takes', trimmed to each camera file and in step with it, as Broadcast WAV";
    }

    @Override
    public boolean needsSound() {
        return true;
    }

    /** Some channels of a source, or our own takes if it has no file. */
    private record Source(String name, List<Media> media, Channels heard) {}

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        List<Source> sources = sources(handOff);
        List<HandOffFile> files = new ArrayList<>();
        for (List<Media> camera : byFile(handOff, Media.Kind.CAMERA)) {
            for (Source source : sources) {
                ClockMap map = map(camera, source.media());
                if (!map.pairs().isEmpty()) {
                    String name =
                            handOff.name() + "-sync-" + lower(camera.get(0).reel()) + "-" + source.name() + ".wav";
                    files.add(new HandOffFile(name, out -> write(handOff, name, camera.get(0), source, map, out)));
                }
            }
        }
        return files;
    }

    /** A recorder whose file is gone is left out; that it is gone is said elsewhere. */
    private static List<Source> sources(HandOff handOff) {
        List<Source> sources = new ArrayList<>();
        for (List<Media> recorder : byFile(handOff, Media.Kind.RECORDER)) {
            Media file = recorder.get(0);
            if (!Files.isRegularFile(file.file())) {
                continue;
            }
            if (file.channels() == 1) {
                sources.add(new Source(lower(file.reel()), recorder, Channels.ALL));
            }
            for (int channel = 1; file.channels() > 1 && channel <= file.channels(); channel++) {
                sources.add(new Source(lower(file.reel()) + "-ch" + channel, recorder, Channels.one(channel)));
            }
        }
        for (List<Media> recorder : byFile(handOff, Media.Kind.RECORDER)) {
            // Two channels that are heard together are one sound, and have a file of their own.
            recorder.stream()
                    .flatMap(media -> media.heard().stream())
                    .filter(Channels::pair)
                    .distinct()
                    .filter(heard -> Files.isRegularFile(recorder.get(0).file()))
                    .forEach(heard -> sources.add(new Source(
                            lower(recorder.get(0).reel()) + "-ch" + heard.first()
                                    + (heard.inverted() ? "-minus-" : "-plus-") + heard.second(),
                            recorder,
                            heard)));
        }
        List<Media> takes = handOff.media().stream()
                .filter(media -> media.kind() == Media.Kind.TAKE)
                .filter(media -> rate(handOff, media.placement().take()).isPresent())
                .toList();
        sources.add(new Source("takes", takes, Channels.ALL));
        return sources;
    }

    private static List<List<Media>> byFile(HandOff handOff, Media.Kind kind) {
        Map<Path, List<Media>> files = new LinkedHashMap<>();
        handOff.media().stream()
                .filter(media -> media.kind() == kind)
                .forEach(media -> files.computeIfAbsent(media.file(), file -> new ArrayList<>())
                        .add(media));
        return List.copyOf(files.values());
    }

    private static ClockMap map(List<Media> camera, List<Media> source) {
        List<ClockMap.Pair> pairs = new ArrayList<>();
        for (Media seen : camera) {
            source.stream()
                    .filter(heard ->
                            heard.placement().take() == seen.placement().take())
                    .filter(heard ->
                            heard.placement().from().isBefore(seen.placement().to())
                                    && seen.placement()
                                            .from()
                                            .isBefore(heard.placement().to()))
                    .forEach(heard -> pairs.add(ClockMap.Pair.of(seen.placement(), heard.placement())));
        }
        return new ClockMap(pairs);
    }

    private static void write(HandOff handOff, String name, Media camera, Source source, ClockMap map, OutputStream out)
            throws IOException, ProblemException {
        boolean own = source.media().get(0).kind() == Media.Kind.TAKE;
        Map<Integer, Integer> rates = own ? rates(handOff, map) : Map.of();
        int rate = rates.values().stream().mapToInt(Integer::intValue).max().orElse(RATE);
        FrameRate frames = handOff.timeline().rate();
        long samples = frames.length(camera.frames()).samples(rate);
        WavChunks.begin(out, rate, samples, List.of(bext(handOff, name, camera, source, rate)));
        try (Samples from = own
                ? Samples.ofTakes(handOff.sound(), take -> rates.getOrDefault(take, rate))
                : Samples.ofFile(source.media().get(0), source.heard(), rate)) {
            for (long done = 0; done < samples; done += rate) {
                short[] piece = new short[(int) Math.min(rate, samples - done)];
                for (int i = 0; i < piece.length; i++) {
                    double ticks = ClockMap.ticks(done + i, rate);
                    ClockMap.Pair pair = map.nearest(ticks);
                    double session = pair.camera().sessionTicks(ticks);
                    double at = own ? session : pair.source().fileTicks(session);
                    int take = pair.camera().take();
                    double value = Interpolator.at(
                            at * from.rate(take) / StreamTime.TICKS_PER_SECOND, number -> from.at(take, number));
                    piece[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(value)));
                }
                WavChunks.samples(out, piece);
            }
        }
    }

    /** The time reference is the camera's timecode, so that programs that go by it put both together. */
    private static WavChunks.Chunk bext(HandOff handOff, String name, Media camera, Source source, int rate) {
        Take take = handOff.state().takes().all().get(camera.placement().take() - 1);
        long ticks = handOff.timeline().rate().ticksAt(camera.firstFrame());
        LocalDateTime began = LocalDateTime.ofInstant(take.when(), handOff.zone())
                .toLocalDate()
                .atStartOfDay()
                .plus(new StreamTime(ticks).toDuration());
        String description = handOff.state().script().title() + ", " + source.name() + " in step with " + camera.name();
        return new WavChunks.Chunk("bext", new Bext(description, Bext.reference(name, began), began, rate).bytes());
    }

    /** The rates of the takes in a camera's file, which may be of several sessions with one microphone each. */
    private static Map<Integer, Integer> rates(HandOff handOff, ClockMap map) {
        Map<Integer, Integer> rates = new LinkedHashMap<>();
        for (ClockMap.Pair pair : map.pairs()) {
            int take = pair.camera().take();
            rate(handOff, take).ifPresent(rate -> rates.put(take, rate));
        }
        return rates;
    }

    /** The rate of a take's recording; empty if it was not recorded or cannot be read, which is said elsewhere. */
    private static Optional<Integer> rate(HandOff handOff, int take) {
        try {
            StreamTime start = handOff.state().takes().all().get(take - 1).start();
            return handOff.sound().read(take, start, start.plus(SOME)).map(AudioBlock::rate);
        } catch (ProblemException e) {
            return Optional.empty();
        }
    }

    private static String lower(String reel) {
        return reel.toLowerCase(Locale.ROOT);
    }
}
