package org.bookholder.follow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.Deed.Hand;
import org.bookholder.follow.Deed.Times;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.FollowEvent.TakeSettled;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** Feeds a follower with random actions and keeps its findings. The audio time advances whatever the ears report. */
final class RandomReading {
    private static final int STEP = StreamTime.TICKS_PER_SECOND / 5;

    private final Follower follower;
    private final List<FollowEvent> events = new ArrayList<>();
    private final List<Hypothesis> late = new ArrayList<>();
    private final boolean openEarLast;
    private int take = 1;
    private long now;

    private RandomReading(Follower follower, boolean openEarLast) {
        this.follower = follower;
        this.openEarLast = openEarLast;
    }

    /** Reads to its end what the deeds say. */
    static List<FollowEvent> of(PreparedScript script, List<Deed> deeds) {
        return new RandomReading(new Follower(script), false).run(deeds);
    }

    /** The same, but the open ear reports everything later than the script ear. */
    static List<FollowEvent> openEarLast(PreparedScript script, List<Deed> deeds) {
        return new RandomReading(new Follower(script), true).run(deeds);
    }

    /** What became of the take. */
    static TakeSettled settled(List<FollowEvent> events) {
        return (TakeSettled) events.get(events.size() - 1);
    }

    private List<FollowEvent> run(List<Deed> deeds) {
        events.addAll(follower.startTake(take, at(), ReadingPosition.START));
        deeds.forEach(this::tell);
        endTake();
        return events;
    }

    private void endTake() {
        late.forEach(hypothesis -> events.addAll(follower.hear(hypothesis)));
        late.clear();
        events.addAll(follower.endTake(at()));
    }

    private void tell(Deed deed) {
        if (deed instanceof Deed.Utterance said) {
            utter(said.ear(), words(said.words(), said.times(), said.steps()));
        } else if (deed instanceof Deed.Spoken said) {
            StreamTime before = at();
            List<RecognizedWord> words = words(said.words(), Times.IN_ORDER, said.steps());
            sound(before, (int) at().since(before).samples(FrameLevels.PER_SECOND), said.below());
            utter(EarKind.SCRIPT, words);
            utter(EarKind.OPEN, words);
        } else if (deed instanceof Deed.Believed believed) {
            hear(new Hypothesis.Partial(believed.ear(), at(), believed.words()));
        } else if (deed instanceof Deed.Sound sound) {
            now += StreamTime.ofSamples(sound.frames(), FrameLevels.PER_SECOND).ticks();
            sound(
                    at().since(StreamTime.ofSamples(sound.frames(), FrameLevels.PER_SECOND)),
                    sound.frames(),
                    sound.below());
        } else if (deed instanceof Deed.Done done) {
            act(done.hand(), new ReadingPosition(done.line(), done.word()));
        }
    }

    private void sound(StreamTime from, int frames, int below) {
        byte[] levels = new byte[frames];
        Arrays.fill(levels, (byte) -below);
        events.addAll(follower.hear(new FrameLevels(from, levels)));
    }

    private void act(Hand hand, ReadingPosition position) {
        switch (hand) {
            case MOVE -> events.addAll(follower.move(at(), position));
            case HOLD -> events.addAll(follower.hold(at()));
            case RESUME -> events.addAll(follower.resume(at()));
            case NEXT_TAKE -> {
                endTake();
                events.addAll(follower.startTake(++take, at(), position));
            }
            default -> throw new IllegalArgumentException("hand (" + hand + ") must be known");
        }
    }

    private void utter(EarKind ear, List<RecognizedWord> words) {
        List<String> said = words.stream().map(RecognizedWord::text).toList();
        for (int count = 1; count <= said.size(); count++) {
            hear(new Hypothesis.Partial(ear, at(), said.subList(0, count)));
        }
        hear(new Hypothesis.Final(ear, at(), words));
    }

    private void hear(Hypothesis hypothesis) {
        if (openEarLast && hypothesis.ear() == EarKind.OPEN) {
            late.add(hypothesis);
        } else {
            events.addAll(follower.hear(hypothesis));
        }
    }

    private List<RecognizedWord> words(List<String> texts, Times times, int steps) {
        List<RecognizedWord> words = new ArrayList<>();
        long length = (long) steps * STEP;
        long start = now;
        now += length * texts.size();
        for (int i = 0; i < texts.size(); i++) {
            long begin = switch (times) {
                case IN_ORDER -> start + i * length;
                case ALL_THE_SAME -> start;
                case BACKWARDS -> start + (texts.size() - 1 - i) * length;
                case FROM_THE_BEGINNING -> i * length;
                case FAR_AHEAD -> now + 1000L * StreamTime.TICKS_PER_SECOND + i * length;
            };
            words.add(new RecognizedWord(texts.get(i), new StreamTime(begin), new StreamTime(begin + length), 1));
        }
        return words;
    }

    private StreamTime at() {
        return new StreamTime(now);
    }
}
