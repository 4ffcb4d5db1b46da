package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * Finds shots of one to three frames, which remain when a cut is slightly misplaced. Confined to one thread.
 *
 * <p>A cut is where a picture differs a lot from the one before it, and far more than neighbouring pictures do; less is
 * enough where black begins or ends. A fade to or from black changes evenly, and is none. Two cuts up to three frames
 * apart are a blip if there is no other cut for three frames before and after. The film's beginning and end count as cuts.
 */
final class BlipFinder {
    /** The longest blip, in frames. */
    static final int LONGEST = 3;

    private static final double LEAST = 10;
    private static final double LEAST_AT_BLACK = 2;
    private static final double TIMES_USUAL = 4;
    private static final int MEMORY = 12;

    private final Runs.Sink sink;
    private final List<Frame> frames = new ArrayList<>();
    private byte @Nullable [] last;
    private boolean lastDark;

    BlipFinder(Runs.Sink sink) {
        this.sink = sink;
    }

    private record Frame(StreamTime at, double difference, boolean cut) {}

    void see(StreamTime at, byte[] luma, boolean dark) {
        double difference = last == null ? 0 : Luma.difference(last, luma);
        double least = dark == lastDark ? LEAST : LEAST_AT_BLACK;
        boolean cut = last == null || difference >= Math.max(least, TIMES_USUAL * usual());
        last = luma;
        lastDark = dark;
        add(new Frame(at, difference, cut));
    }

    void end(StreamTime at) {
        add(new Frame(at, 0, true));
        for (int i = 0; i < LONGEST; i++) {
            add(new Frame(at, 0, false));
        }
    }

    /** How much recent neighbouring pictures differed where there was no cut. */
    private double usual() {
        double[] calm = frames.stream()
                .filter(f -> !f.cut())
                .mapToDouble(Frame::difference)
                .sorted()
                .toArray();
        return calm.length == 0 ? 0 : calm[calm.length / 2];
    }

    private void add(Frame frame) {
        frames.add(frame);
        if (frames.size() > MEMORY) {
            frames.remove(0);
        }
        int newest = frames.size() - 1;
        int second = newest - LONGEST;
        if (second < 1 || !frames.get(second).cut() || cuts(second + 1, newest + 1) > 0) {
            return;
        }
        int begin = second - 1;
        while (begin >= 0 && !frames.get(begin).cut()) {
            begin--;
        }
        if (begin >= 0 && second - begin <= LONGEST && cuts(Math.max(0, begin - LONGEST), begin) == 0) {
            sink.run(frames.get(begin).at(), frames.get(second).at(), second - begin);
        }
    }

    private long cuts(int from, int to) {
        return frames.subList(from, to).stream().filter(Frame::cut).count();
    }
}
