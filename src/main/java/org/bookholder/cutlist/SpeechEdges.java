package org.bookholder.cutlist;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/**
 * Finds by ear where speech really begins and ends near where the recogniser says it does: recognised times can be out
 * by a tenth of a second, and a cut must not fall into a word.
 */
final class SpeechEdges {
    private static final StreamTime FRAME = StreamTime.ofSeconds(0.01);

    /** How far the recogniser is trusted to be out. */
    private static final int REACH = 30;

    /** Frames of the speech itself that are looked at to learn how loud it is. */
    private static final int INSIDE = 30;

    /** A sound before a word that is further off than the closure of a plosive does not belong to it. */
    private static final int CLOSURE = 10;

    /** With less than this between room and voice, in dB, the recogniser knows better. */
    private static final double LEAST_CONTRAST = 12;

    /** Quiet consonants lie this share of the way from the room's level to the voice's, or above. */
    private static final double SHARE = 0.35;

    /** A room counts as no quieter than this below the voice, in dB: below are only what codecs leave of silence. */
    private static final double DEEPEST = 60;

    private final TakeSound sound;

    SpeechEdges(TakeSound sound) {
        this.sound = sound;
    }

    /** When the speech that the recogniser says begins at {@code start} begins; not before {@code earliest}. */
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

    /** When the speech that the recogniser says ends at {@code end} ends; not after {@code latest}. */
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
     * Since when it was silent before the speech that the recogniser says begins at {@code start}; {@code known} if no
     * silence is heard near by. The beginning of a line that follows on a broken-off one may have been taken for its end.
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

    /** The quietest place between two times: where to cut if there is no silence. */
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
        return sound.read(take, from, to).map(SpeechEdges::levels).filter(l -> l.count() > 0);
    }

    private static Levels levels(AudioBlock block) {
        int length = (int) FRAME.samples(block.rate());
        double[] decibels = new double[block.samples().length / length];
        for (int i = 0; i < decibels.length; i++) {
            double squares = 1e-3;
            for (int k = i * length; k < (i + 1) * length; k++) {
                squares += (double) block.samples()[k] * block.samples()[k];
            }
            decibels[i] = 10 * Math.log10(squares / length);
        }
        return new Levels(block.start(), decibels);
    }

    private static StreamTime frames(int count) {
        return new StreamTime(count * FRAME.ticks());
    }

    private static StreamTime back(StreamTime time, int frames) {
        return time.since(frames(frames));
    }

    /** The sound level of each hundredth of a second. */
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
