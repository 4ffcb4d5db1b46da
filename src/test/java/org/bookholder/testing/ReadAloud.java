package org.bookholder.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.bookholder.follow.Follower;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.settle.Settler;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/**
 * Reads a text to a follower as two perfect ears would hear it: three words a second, {@code |} for a pause of one
 * second that ends the utterance. The script ear writes {@code [unk]} for words that are not in the script.
 */
public final class ReadAloud {
    private static final double WORD = 1 / 3.0;

    private final Follower follower;
    private final Set<String> known;
    private final List<FollowEvent> events = new ArrayList<>();
    private double now = 0.5;

    private ReadAloud(PreparedScript script, UnaryOperator<Settler> settlers) {
        follower = new Follower(script, settlers);
        known = script.lines().stream()
                .flatMap(List::stream)
                .flatMap(w -> w.forms().stream())
                .flatMap(List::stream)
                .collect(Collectors.toSet());
        script.rivals().forEach(known::addAll);
        events.addAll(follower.startTake(1, StreamTime.ZERO, ReadingPosition.START));
    }

    /** A reader of a script whose words the recogniser all knows. */
    public static ReadAloud of(Script script) {
        return of(known(script));
    }

    /** A reader of a script that was prepared for a recogniser that does not know all of it. */
    public static ReadAloud of(PreparedScript script) {
        return new ReadAloud(script, UnaryOperator.identity());
    }

    /** A reader of a script that is settled by other settlers. */
    public static ReadAloud of(Script script, UnaryOperator<Settler> settlers) {
        return new ReadAloud(known(script), settlers);
    }

    /** The script as a recogniser hears it that knows every word. */
    public static PreparedScript known(Script script) {
        return new PreparedScript(
                script,
                script.lines().stream()
                        .map(l -> l.words().stream()
                                .map(w -> new PreparedWord(w, w.spoken(), false))
                                .toList())
                        .toList(),
                List.of());
    }

    /** Reads on. */
    public ReadAloud say(String text) {
        for (String utterance : text.split("\\|", -1)) {
            utter(Arrays.stream(utterance.trim().split("\\s+"))
                    .filter(w -> !w.isEmpty())
                    .toList());
            now += 1;
        }
        return this;
    }

    private void utter(List<String> words) {
        List<RecognizedWord> script = new ArrayList<>();
        List<RecognizedWord> open = new ArrayList<>();
        for (String word : words) {
            String heard = known.contains(word) ? word : RecognizedWord.UNKNOWN;
            script.add(timed(heard));
            open.add(timed(word));
            now += WORD;
            List<String> said = open.stream().map(RecognizedWord::text).toList();
            events.addAll(follower.hear(new Hypothesis.Partial(EarKind.OPEN, StreamTime.ofSeconds(now), said)));
            List<String> partial = script.stream().map(RecognizedWord::text).toList();
            events.addAll(follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, StreamTime.ofSeconds(now), partial)));
        }
        end(script, open);
    }

    /**
     * Says one utterance that the two ears hear differently: as many words each, word by word at the same time; {@code -}
     * where an ear hears nothing.
     */
    public ReadAloud say(String scriptEar, String openEar) {
        String[] script = scriptEar.split(" ", -1);
        String[] open = openEar.split(" ", -1);
        if (script.length != open.length) {
            throw new IllegalArgumentException("both ears must be given as many words");
        }
        List<RecognizedWord> byScript = new ArrayList<>();
        List<RecognizedWord> byOpen = new ArrayList<>();
        for (int i = 0; i < script.length; i++) {
            if (!script[i].equals("-")) {
                byScript.add(timed(script[i]));
            }
            if (!open[i].equals("-")) {
                byOpen.add(timed(open[i]));
            }
            now += WORD;
        }
        end(byScript, byOpen);
        now += 1;
        return this;
    }

    /** Says nothing for some seconds; the sound of the room is measured in each tenth of a second. */
    public ReadAloud quiet(double seconds) {
        int frames = FrameLevels.PER_SECOND / 10;
        for (long left = Math.round(10 * seconds); left > 0; left--) {
            byte[] room = new byte[frames];
            Arrays.fill(room, (byte) -60);
            events.addAll(follower.hear(new FrameLevels(StreamTime.ofSeconds(now), room)));
            now += 0.1;
        }
        return this;
    }

    /** Ends an utterance with the words that each ear heard in it. */
    private void end(List<RecognizedWord> script, List<RecognizedWord> open) {
        StreamTime end = StreamTime.ofSeconds(now + 0.5);
        events.addAll(follower.hear(new Hypothesis.Final(EarKind.SCRIPT, end, script)));
        events.addAll(follower.hear(new Hypothesis.Final(EarKind.OPEN, end, open)));
    }

    private RecognizedWord timed(String word) {
        return new RecognizedWord(word, StreamTime.ofSeconds(now), StreamTime.ofSeconds(now + WORD), 1);
    }

    /** The follower, for what a hand does. */
    public Follower follower() {
        return follower;
    }

    /** How far the audio has come. */
    public StreamTime now() {
        return StreamTime.ofSeconds(now);
    }

    /** What following found out so far. */
    public List<FollowEvent> events() {
        return List.copyOf(events);
    }

    /** The last position that was shown. */
    public ReadingPosition position() {
        ReadingPosition position = ReadingPosition.START;
        for (FollowEvent event : events) {
            if (event instanceof FollowEvent.Moved moved) {
                position = moved.position();
            }
        }
        return position;
    }

    /** Ends the take. */
    public FollowEvent.TakeSettled cut() {
        return follower.endTake(now()).stream()
                .filter(FollowEvent.TakeSettled.class::isInstance)
                .map(FollowEvent.TakeSettled.class::cast)
                .findFirst()
                .orElseThrow();
    }
}
