package org.bookholder.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.Follower;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * A take whose sound is measured as it is read: each word is a third of a second of voice, and an ear reports it when it has been
 * said. What the ears hear and what the sound is can be told apart, as they are in a room.
 */
public final class HeardLive {
    private static final byte ROOM = -60;
    private static final byte VOICE = -20;

    /** Frames of voice in a word, and of the short gap after it. */
    private static final int WORD = 30;

    private static final int GAP = 3;

    private final Follower follower;
    private final List<FollowEvent> events = new ArrayList<>();
    private final List<String> script = new ArrayList<>();
    private final List<String> open = new ArrayList<>();
    private final List<RecognizedWord> timed = new ArrayList<>();
    private long frames;

    /** A take that begins with half a second of room. */
    public HeardLive(Script lesson) {
        follower = new Follower(Prepared.of(lesson));
        events.addAll(follower.startTake(1, StreamTime.ZERO, ReadingPosition.START));
        quiet(0.5);
    }

    /** Words that both ears hear. */
    public HeardLive say(String words) {
        for (String word : words.split(" ", -1)) {
            word(word, word);
        }
        return this;
    }

    /** Words of the script that the script ear believes to hear while something else is said, or nothing if it is empty. */
    public HeardLive sayBesideTheScript(String scriptEar, String openEar) {
        String[] heard = scriptEar.split(" ", -1);
        String[] said = openEar.split(" ", -1);
        for (int i = 0; i < heard.length; i++) {
            word(heard[i], i < said.length ? said[i] : "");
        }
        return this;
    }

    /** Words that only the script ear reports: the open ear is behind. */
    public HeardLive sayWithTheOpenEarBehind(String words) {
        for (String word : words.split(" ", -1)) {
            sound(VOICE, WORD);
            sound(ROOM, GAP);
            reportScript(word);
        }
        return this;
    }

    private void word(String heard, String said) {
        sound(VOICE, WORD);
        sound(ROOM, GAP);
        if (!said.isEmpty()) {
            open.add(said);
        }
        events.addAll(follower.hear(new Hypothesis.Partial(EarKind.OPEN, now(), open)));
        reportScript(heard);
    }

    /** What the script ear reports before the sound of it is over. */
    public HeardLive reportScript(String word) {
        StreamTime end = now();
        script.add(word);
        timed.add(new RecognizedWord(word, StreamTime.max(end.since(StreamTime.ofSeconds(0.3)), lastEnd()), end, 1));
        events.addAll(follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, end, script)));
        return this;
    }

    private StreamTime lastEnd() {
        return timed.isEmpty() ? StreamTime.ZERO : timed.get(timed.size() - 1).end();
    }

    /** Voice of which no ear reports anything. */
    public HeardLive voice(double seconds) {
        return sound(VOICE, Math.round(seconds * FrameLevels.PER_SECOND));
    }

    /** Nothing but the room. */
    public HeardLive quiet(double seconds) {
        return sound(ROOM, Math.round(seconds * FrameLevels.PER_SECOND));
    }

    private HeardLive sound(byte level, long count) {
        for (long i = 0; i < count; i++) {
            byte[] frame = new byte[1];
            Arrays.fill(frame, level);
            events.addAll(follower.hear(new FrameLevels(now(), frame)));
            frames++;
        }
        return this;
    }

    /** Ends the utterance of both ears. */
    public HeardLive ends() {
        List<RecognizedWord> heard = List.copyOf(timed);
        timed.clear();
        script.clear();
        open.clear();
        events.addAll(follower.hear(new Hypothesis.Final(EarKind.OPEN, now(), heard)));
        events.addAll(follower.hear(new Hypothesis.Final(EarKind.SCRIPT, now(), heard)));
        return this;
    }

    /** How far the sound has come. */
    public StreamTime now() {
        return StreamTime.ofSamples(frames, FrameLevels.PER_SECOND);
    }

    /** The follower, for what a hand does. */
    public Follower follower() {
        return follower;
    }

    /** What following found out so far. */
    public List<FollowEvent> events() {
        return List.copyOf(events);
    }

    /** Each move of the position so far, in order. */
    public List<FollowEvent.Moved> moves() {
        return events.stream()
                .filter(FollowEvent.Moved.class::isInstance)
                .map(FollowEvent.Moved.class::cast)
                .toList();
    }

    /** The position that is shown. */
    public ReadingPosition position() {
        List<FollowEvent.Moved> moves = moves();
        return moves.get(moves.size() - 1).position();
    }
}
