package org.bookholder.cutlist;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.FrameMeter;
import org.bookholder.timing.StreamTime;

/**
 * Finds in the sound where speech really begins and ends near the recognised times. Those can be off by a tenth of a
 * second, and a cut must not fall within a word. Judged by the voice's band alone, so that hum and rumble move no cut.
 */
final class SpeechEdges {
    private static final StreamTime FRAME = StreamTime.ofSeconds(0.01);

    /** How far the recognised times can be off, in frames. */
    private static final int REACH = 30;

    /** Number of frames of speech used to measure its level. */
    private static final int INSIDE = 30;

    /** Longest closure of a plosive, in frames; a sound further from a word does not belong to it. */
    private static final int CLOSURE = 10;

    /** Longest remains of another word at a cut, in frames; what is louder for longer is a breath, or belongs to the line. */
    private static final int REMAINS = 10;

    /** With less contrast than this between room and voice, in dB, the recognised times are kept. */
    private static final double LEAST_CONTRAST = 12;

    /** Threshold for quiet consonants, as a fraction of the way from the room's level to the voice's. */
    private static final double SHARE = 0.35;

    /** The room's level is taken as at most this far below the voice, in dB; anything lower is only codec silence. */
    private static final double DEEPEST = 60;

    /** Frames before what is looked at, in which the filter of the voice's band settles. */
    private static final int LEAD = 3;

    private final TakeSound sound;

    SpeechEdges(TakeSound sound) {
        this.sound = sound;
    }

    /** Where the speech recognised at {@code start} really begins; not before {@code earliest}. */
    StreamTime onset(int take, StreamTime start, StreamTime earliest) throws ProblemException {
        StreamTime from = StreamTime.max(earliest, back(start, REACH));
        Optional<Levels> levels = levels(take, from, start.plus(frames(INSIDE)));
        if (levels.isEmpty() || !levels.get().tells()) {
            return StreamTime.max(start, earliest);
        }
        Levels heard = levels.get();
        int first = heard.firstLoudFrom(heard.frameAt(start));
        int quiet = 0;
        for (int i = first - 1; i >= 0 && quiet < CLOSURE; i--) {
            quiet = heard.loud(i) ? 0 : quiet + 1;
            first = heard.loud(i) ? i : first;
        }
        return heard.begin(first);
    }

    /** Where the speech recognised up to {@code end} really ends; not after {@code latest}. */
    StreamTime offset(int take, StreamTime end, StreamTime latest) throws ProblemException {
        StreamTime to = StreamTime.min(latest, end.plus(frames(REACH)));
        Optional<Levels> levels = levels(take, back(end, INSIDE), to);
        if (levels.isEmpty() || !levels.get().tells()) {
            return StreamTime.min(end, latest);
        }
        Levels heard = levels.get();
        int last = heard.lastLoudTo(heard.frameAt(end) - 1);
        int quiet = 0;
        for (int i = last + 1; i < heard.count() && quiet < CLOSURE; i++) {
            quiet = heard.loud(i) ? 0 : quiet + 1;
            last = heard.loud(i) ? i : last;
        }
        return StreamTime.min(heard.begin(last + 1), latest);
    }

    /**
     * Start of the silence before the speech recognised at {@code start}; {@code known} if there is no silence nearby.
     * Needed because the beginning of a line after a broken-off one may have been recognised as that one's end.
     */
    StreamTime silenceBefore(int take, StreamTime start, StreamTime known) throws ProblemException {
        StreamTime from = back(start, 3 * REACH);
        Optional<Levels> levels = levels(take, from, start.plus(frames(INSIDE)));
        if (levels.isEmpty() || !levels.get().tells()) {
            return known;
        }
        Levels heard = levels.get();
        int reach = heard.frameAt(back(start, REACH));
        int end = heard.firstLoudFrom(heard.frameAt(start));
        int i = end - 1;
        while (i >= 0 && (end - 1 - i < CLOSURE || !heard.loud(i))) {
            end = heard.loud(i) ? i : end;
            i--;
        }
        boolean silent = end - 1 - i >= CLOSURE && end >= reach;
        return silent ? StreamTime.min(known, heard.begin(i + 1)) : known;
    }

    /**
     * Where the quiet begins if something is still heard at {@code cut}, such as the end of a word that was broken off;
     * {@code cut} if it is quiet there, or nothing nearby is.
     *
     * @param onset where the speech begins that must not be touched
     */
    StreamTime quietAfter(int take, StreamTime cut, StreamTime onset) throws ProblemException {
        Optional<Levels> levels = levels(take, cut, onset.plus(frames(INSIDE)));
        if (levels.isEmpty() || !levels.get().tells()) {
            return cut;
        }
        Levels heard = levels.get();
        int last = Math.min(REMAINS, heard.frameAt(onset) - 1);
        for (int i = 0; i <= last; i++) {
            if (!heard.loud(i)) {
                return i == 0 ? cut : heard.begin(i);
            }
        }
        return cut;
    }

    /** The quietest place between two times, to cut at if there is no silence. */
    StreamTime quietest(int take, StreamTime from, StreamTime to) throws ProblemException {
        StreamTime middle = new StreamTime((from.ticks() + to.ticks()) / 2);
        if (to.since(from).compareTo(FRAME) <= 0) {
            return middle;
        }
        return levels(take, from, to).map(Levels::quietest).orElse(middle);
    }

    private Optional<Levels> levels(int take, StreamTime from, StreamTime to) throws ProblemException {
        if (!from.isBefore(to)) {
            return Optional.empty();
        }
        return sound.read(take, back(from, LEAD), to)
                .flatMap(block -> levels(block, from))
                .filter(l -> l.count() > 0);
    }

    /** The levels from a time on; the sound before it only lets the meter's filter settle. */
    private static Optional<Levels> levels(AudioBlock block, StreamTime from) {
        return FrameMeter.voiceBand().hear(block).map(heard -> {
            long early = Math.max(0, from.since(heard.start()).ticks() + FRAME.ticks() - 1) / FRAME.ticks();
            int skipped = (int) Math.min(early, heard.decibels().length);
            double[] decibels = new double[heard.decibels().length - skipped];
            Arrays.setAll(decibels, i -> heard.decibels()[skipped + i]);
            return new Levels(heard.start().plus(frames(skipped)), decibels);
        });
    }

    private static StreamTime frames(int count) {
        return new StreamTime(count * FRAME.ticks());
    }

    private static StreamTime back(StreamTime time, int frames) {
        return time.since(frames(frames));
    }

    /** The level of the voice's band in frames of a hundredth of a second. */
    private static final class Levels {
        private final StreamTime start;
        private final double[] decibels;
        private final double contrast;
        private final double loudFrom;

        Levels(StreamTime start, double[] decibels) {
            this.start = start;
            this.decibels = decibels;
            double loudest = Arrays.stream(decibels).max().orElse(0);
            double softest = Arrays.stream(decibels).min().orElse(0);
            double room = Math.max(softest, loudest - DEEPEST);
            contrast = loudest - softest;
            loudFrom = room + SHARE * (loudest - room);
        }

        int count() {
            return decibels.length;
        }

        StreamTime begin(int frame) {
            return start.plus(frames(frame));
        }

        int frameAt(StreamTime time) {
            return (int) Math.min(count() - 1L, time.since(start).ticks() / FRAME.ticks());
        }

        boolean tells() {
            return contrast >= LEAST_CONTRAST;
        }

        boolean loud(int frame) {
            return decibels[frame] > loudFrom;
        }

        int firstLoudFrom(int frame) {
            return IntStream.range(frame, count())
                    .filter(this::loud)
                    .findFirst()
                    .orElse(frame);
        }

        int lastLoudTo(int frame) {
            return IntStream.rangeClosed(0, frame)
                    .map(i -> frame - i)
                    .filter(this::loud)
                    .findFirst()
                    .orElse(frame);
        }

        StreamTime quietest() {
            int softest = IntStream.range(0, count())
                    .boxed()
                    .min((a, b) -> Double.compare(decibels[a], decibels[b]))
                    .orElse(0);
            return begin(softest).plus(new StreamTime(FRAME.ticks() / 2));
        }
    }
}
