package org.bookholder.handoff.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.cutlist.Clip;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Take;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** The takes as Broadcast WAV: with time of day, lesson, take, and whether it is used. */
public final class TakesPart implements HandOffPart {
    private static final StreamTime PIECE = StreamTime.ofSeconds(30);

    private static final StreamTime SOME = StreamTime.ofSeconds(0.1);

    @Override
    public String name() {
        return "takes";
    }

    @Override
    public String description() {
        return "the takes' sound as Broadcast WAV, with time of day and notes";
    }

    @Override
    public boolean needsSound() {
        return true;
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        List<Take> all = handOff.state().takes().all();
        List<Take> recorded =
                all.stream().filter(take -> recorded(handOff, take)).toList();
        return (recorded.isEmpty() ? all : recorded)
                .stream()
                        .map(take ->
                                new HandOffFile(fileName(handOff, take.number()), out -> write(handOff, take, out)))
                        .toList();
    }

    /** Whether it has any sound; one that cannot be read tells so when it is written. */
    private static boolean recorded(HandOff handOff, Take take) {
        try {
            StreamTime start = take.start();
            return handOff.sound().read(take.number(), start, start.plus(SOME)).isPresent();
        } catch (ProblemException e) {
            return true;
        }
    }

    /** The name of a take's file in the hand-off. */
    public static String fileName(HandOff handOff, int take) {
        return fileName(handOff.name(), take);
    }

    /** The name of a take's file in a hand-off of that name. */
    public static String fileName(String name, int take) {
        return String.format(Locale.ROOT, "%s-take-%03d.wav", name, take);
    }

    private static void write(HandOff handOff, Take take, OutputStream out) throws IOException, ProblemException {
        Optional<AudioBlock> first =
                handOff.sound().read(take.number(), take.start(), take.start().plus(PIECE));
        if (first.isEmpty()) {
            throw new ProblemException(
                    "the recording of take " + take.number() + " is missing",
                    fileName(handOff, take.number()),
                    "leave the takes (takes) out of the hand-off");
        }
        int rate = first.get().rate();
        long samples = take.end().since(take.start()).samples(rate);
        WavChunks.begin(out, rate, samples, chunks(handOff, take, rate));
        long written = 0;
        StreamTime at = take.start();
        while (written < samples) {
            StreamTime next = StreamTime.min(at.plus(PIECE), take.end());
            long wanted = next.since(take.start()).samples(rate) - written;
            Optional<AudioBlock> piece = handOff.sound().read(take.number(), at, next);
            WavChunks.samples(out, filled(piece, (int) wanted));
            written += wanted;
            at = next;
        }
    }

    /** Fills with silence whatever was not recorded. */
    private static short[] filled(Optional<AudioBlock> piece, int length) {
        short[] samples = new short[length];
        piece.ifPresent(p -> System.arraycopy(p.samples(), 0, samples, 0, Math.min(length, p.samples().length)));
        return samples;
    }

    private static List<WavChunks.Chunk> chunks(HandOff handOff, Take take, int rate) {
        String lesson = handOff.state().script().title();
        LocalDateTime began = LocalDateTime.ofInstant(take.when(), handOff.zone());
        List<Clip> used = handOff.cut().clips().stream()
                .filter(clip -> clip.take() == take.number())
                .toList();
        String note = used.isEmpty()
                ? "nothing used"
                : "used: lines " + used.stream().map(Clip::lines).collect(Collectors.joining(", "));
        Bext bext = new Bext(
                lesson + ", take " + take.number() + ", " + note,
                Bext.reference(fileName(handOff, take.number()), began),
                began,
                rate);
        Ixml ixml = new Ixml(
                lesson,
                lesson,
                take.number(),
                !used.isEmpty(),
                note,
                handOff.timeline().timecode(),
                Bext.samplesSinceMidnight(began, rate),
                rate);
        List<WavChunks.Chunk> chunks = new ArrayList<>();
        chunks.add(new WavChunks.Chunk("bext", bext.bytes()));
        chunks.add(new WavChunks.Chunk("iXML", ixml.bytes()));
        return chunks;
    }
}
