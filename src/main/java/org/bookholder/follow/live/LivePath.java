package org.bookholder.follow.live;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.graph.ViterbiTracker;
import org.bookholder.timing.StreamTime;

/**
 * The reading position while the words are being said, from the script ear's partial hypotheses.
 *
 * <p>Only tokens that differ from the partial hypothesis before cost work.
 */
public final class LivePath {
    /** Words ahead of the shown one that count as reading on; further is a jump. */
    private static final int READING_ON = 8;

    /** How much better, in nats, a jump must explain what was heard than staying does. */
    private static final double JUMP_MARGIN = 5.0;

    /** The same where the open ear, though in time, did not hear the words. */
    private static final double DENIED_MARGIN = 10;

    private static final double AGREED = 0.8;

    /** What a jump to a word within another line needs besides: words of speech that is not in the script lie there. */
    private static final double INSIDE_MARGIN = 6;

    /** How many words of a line that is not beside the shown one must be heard there before it is believed. */
    private static final int FAR = 3;

    /** The same after something that is not in the script: it often has words of it, and one goes on where one was. */
    private static final int FAR_AFTER_ASIDE = 5;

    /** How many words of the next line may have been misheard where it begins, and how many must then be heard there. */
    private static final int MISHEARD_AT_START = 2;

    private static final int HEARD_AFTER_START = 2;

    /** Silence after a line's last word that shows that it has been said to its end. */
    private static final StreamTime SAID = StreamTime.ofSeconds(0.17);

    /** Silence before a line's last word after which it is no longer waited for. */
    private static final StreamTime BROKEN_OFF = StreamTime.ofSeconds(0.35);

    /** How many words at a line's end may go unrecognised, and how long they may take in seconds; more is an aside. */
    private static final int MOST_MISHEARD = 4;

    private static final double LONGEST_MISHEARD = 2;

    /** How long a line's last word may sound, once it has been recognised, before it counts as said to its end. */
    private static final StreamTime LONGEST_END = StreamTime.ofSeconds(1);

    private final ReadingGraph graph;
    private final ViterbiTracker tracker;
    private final Loudness loudness;
    private final OpenEarOpinion echo;
    private Beam settled;
    private final List<String> tokens = new ArrayList<>();
    private final List<Beam> beams = new ArrayList<>();
    private int shown;
    private boolean readOn;
    private StreamTime now = StreamTime.ZERO;
    private StreamTime shownSince = StreamTime.ZERO;
    private int ending = -1;
    private StreamTime endingSince = StreamTime.ZERO;

    public LivePath(ReadingGraph graph, ViterbiTracker tracker, Loudness loudness, OpenEarOpinion echo, int word) {
        this.graph = graph;
        this.tracker = tracker;
        this.loudness = loudness;
        this.echo = echo;
        this.settled = new Beam(PathStep.start(word));
        this.shown = word;
    }

    /** The word to be read next. */
    public int shown() {
        return shown;
    }

    /** Takes in what is believed at {@code at}; a place before the utterance's first word is a pause. */
    public void partial(List<String> words, StreamTime at) {
        now = at;
        int same = 0;
        while (same < Math.min(words.size(), tokens.size()) && words.get(same).equals(tokens.get(same))) {
            same++;
        }
        tokens.subList(same, tokens.size()).clear();
        beams.subList(same, beams.size()).clear();
        for (String word : words.subList(same, words.size())) {
            beams.add(tracker.hear(belief(), word, tokens.isEmpty(), null));
            tokens.add(word);
        }
        show();
    }

    /** Takes over what was settled of the utterance that is over. */
    public void settle(Beam beam, StreamTime at) {
        now = at;
        settled = beam;
        tokens.clear();
        beams.clear();
        show();
    }

    /** Shows another word by hand. */
    public void move(int word) {
        if (beams.isEmpty()) {
            settled = settled.orAt(word);
        } else {
            beams.set(beams.size() - 1, belief().orAt(word));
        }
        shown = word;
    }

    /** Whether the last change of the shown word was reading on, not a jump. */
    public boolean readOn() {
        return readOn;
    }

    /** How many tokens at the end of what was heard are not in the script. */
    public int tokensOff() {
        int count = 0;
        for (PathStep step = belief().best(); step != null && step.off(); step = step.before()) {
            count++;
        }
        return count;
    }

    private Beam belief() {
        return beams.isEmpty() ? settled : beams.get(beams.size() - 1);
    }

    private void show() {
        PathStep best = belief().best();
        OptionalInt end = lineEnd(best);
        int word = end.orElseGet(() -> graph.wordAt(lastSure(best).place()));
        if ((best.off() && end.isEmpty()) || word == shown) {
            return;
        }
        if ((readsOn(word) && !best.jumped()) || margin(best) >= needed(best)) {
            readOn = readsOn(word);
            shown = untilSaid(word);
            shownSince = loudness.heardTo();
        }
    }

    /** Looks again at the end of a line, now that more of the sound is known. */
    public void listen() {
        now = loudness.heardTo();
        show();
    }

    /**
     * The end of the line that is being read, if it must be over although its last word was not recognised: something
     * was heard in that word's place, or nothing but the room has been heard for a while.
     */
    private OptionalInt lineEnd(PathStep best) {
        int word = graph.wordAt(best.place());
        boolean begun = best.kind() != PathStep.Kind.START && !graph.beginsLine(word);
        if (best.kind() == PathStep.Kind.SUBSTITUTION && graph.beginsLine(word) && said()) {
            return OptionalInt.of(word);
        }
        if (begun && BROKEN_OFF.compareTo(loudness.quiet()) <= 0) {
            int next = graph.firstWord(graph.line(word) + 1);
            if (next == word + 1 || (next - word <= MOST_MISHEARD && saidUnheard(word, next))) {
                return OptionalInt.of(next);
            }
        }
        return OptionalInt.empty();
    }

    /** Whether, since the position last moved, there was voice for about as long as these words take. */
    private boolean saidUnheard(int from, int to) {
        double shortest = 0;
        for (int word = from; word < to; word++) {
            shortest += graph.shortest(word);
        }
        double voice = loudness.voiceAfter(shownSince).seconds();
        return voice >= shortest && voice <= LONGEST_MISHEARD;
    }

    /**
     * How much better, in nats, a jump must explain what was heard than staying does. Going on with the next line when
     * this one was broken off is what is to be expected; it need only be the likeliest.
     */
    private double needed(PathStep best) {
        JumpEvidence landing = JumpEvidence.of(best, graph);
        if (landing.jumped() && beginsNextLine(landing)) {
            return 0;
        }
        if (landing.jumped() && far(landing.word()) && landing.since().size() < wordsThere(landing)) {
            return Double.POSITIVE_INFINITY;
        }
        List<String> since = landing.since();
        boolean denied = !since.isEmpty() && echo.inTime(now) && echo.agreement(since) < AGREED;
        boolean inside = landing.jumped() && inAnotherLine(landing.word());
        return (denied ? DENIED_MARGIN : JUMP_MARGIN) + (inside ? INSIDE_MARGIN : 0);
    }

    private boolean far(int word) {
        return Math.abs(graph.line(word) - graph.line(shown)) > 1;
    }

    private static int wordsThere(JumpEvidence landing) {
        return landing.afterAside() ? FAR_AFTER_ASIDE : FAR;
    }

    private boolean beginsNextLine(JumpEvidence landing) {
        int line = graph.line(landing.word());
        int misheard = landing.word() - graph.firstWord(line);
        boolean begun = misheard == 0
                || (misheard <= MISHEARD_AT_START
                        && landing.since().size() >= HEARD_AFTER_START
                        && !landing.afterAside());
        return begun && line == graph.line(shown) + 1;
    }

    private boolean inAnotherLine(int word) {
        return !graph.beginsLine(word) && graph.line(word) != graph.line(shown);
    }

    /** Where no sound is measured, what has been recognised has been said. */
    private boolean said() {
        return loudness.unknown() || SAID.compareTo(loudness.quiet()) <= 0;
    }

    /**
     * A recogniser that knows the line writes its last word while that is still being said; until it has been, it is the
     * word that is being read.
     */
    private int untilSaid(int word) {
        if (word == 0 || !graph.beginsLine(word) || said()) {
            ending = -1;
            return word;
        }
        if (ending != word) {
            ending = word;
            endingSince = loudness.heardTo();
        }
        boolean over = LONGEST_END.isBefore(loudness.heardTo().since(endingSince));
        return over ? word : word - 1;
    }

    /** A word heard in place of another is shown as read only once the words after it match. */
    private static PathStep lastSure(PathStep best) {
        PathStep step = best;
        while (step.kind() == PathStep.Kind.SUBSTITUTION && step.before() != null) {
            step = step.before();
        }
        return step;
    }

    private boolean readsOn(int word) {
        return word >= shown && word <= shown + READING_ON;
    }

    /** How much dearer the best explanation is that needs no jump from the shown word. */
    private double margin(PathStep best) {
        double staying = Double.POSITIVE_INFINITY;
        for (PathStep step : belief().steps()) {
            if (readsOn(graph.wordAt(step.place()))) {
                staying = Math.min(staying, step.cost());
            }
        }
        return staying - best.cost();
    }
}
