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
 * Works out the reading position while words are being said, from the script ear's partial hypotheses.
 *
 * <p>Only tokens that differ from the previous partial hypothesis are processed.
 */
public final class LivePath {
    /** A move forward by up to this many words counts as reading on; a longer one is a jump. */
    private static final int READING_ON = 8;

    /** How much better than staying, in nats, a jump must explain what was heard. */
    private static final double JUMP_MARGIN = 5.0;

    /** The same if the open ear, although up to date, did not hear the words. */
    private static final double DENIED_MARGIN = 10;

    private static final double AGREED = 0.8;

    /**
     * What a jump into the middle of another line needs in addition, because speech that is not in the script often
     * seems to match words there.
     */
    private static final double INSIDE_MARGIN = 6;

    /** How many words must be heard in a line that is not next to the shown one before the jump is believed. */
    private static final int FAR = 3;

    /**
     * The same after an aside: asides often contain words of the script, and readers usually continue where they were.
     */
    private static final int FAR_AFTER_ASIDE = 5;

    /** How many words at the start of the next line may be misheard, and how many must then be heard after them. */
    private static final int MISHEARD_AT_START = 2;

    private static final int HEARD_AFTER_START = 2;

    /** Silence after a line's last word that is long enough to show that the line has been said to its end. */
    private static final StreamTime SAID = StreamTime.ofSeconds(0.17);

    /** After this much silence before a line's last word, the position no longer waits for that word. */
    private static final StreamTime BROKEN_OFF = StreamTime.ofSeconds(0.35);

    /**
     * How many words at the end of a line may go unrecognised, and how long they may take in seconds; anything more is
     * an aside.
     */
    private static final int MOST_MISHEARD = 4;

    private static final double LONGEST_MISHEARD = 2;

    /** How long after being recognised a line's last word may go on before it counts as said to its end. */
    private static final StreamTime LONGEST_END = StreamTime.ofSeconds(1);

    private final ReadingGraph graph;
    private final ViterbiTracker tracker;
    private final Loudness loudness;
    private final OpenEarOpinion echo;
    private Beam settled;
    private final List<String> tokens = new ArrayList<>();
    private final List<Beam> beams = new ArrayList<>();
    private boolean divided;
    private int shown;
    private boolean readOn;
    private StreamTime now = StreamTime.ZERO;
    private StreamTime shownSince = StreamTime.ZERO;
    private int ending = -1;
    private StreamTime endingSince = StreamTime.ZERO;

    /** The place in the script from which the line was last taken as ended; -1 if the reading has gone on since. */
    private int endedAt = -1;

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

    /**
     * Takes in the partial hypothesis at {@code at}; there is a pause before an utterance's first word, unless the
     * utterance before it was divided.
     */
    public void partial(List<String> words, StreamTime at) {
        now = at;
        hear(words);
        show();
    }

    private void hear(List<String> words) {
        int same = 0;
        while (same < Math.min(words.size(), tokens.size()) && words.get(same).equals(tokens.get(same))) {
            same++;
        }
        tokens.subList(same, tokens.size()).clear();
        beams.subList(same, beams.size()).clear();
        for (String word : words.subList(same, words.size())) {
            beams.add(tracker.hear(belief(), word, tokens.isEmpty() && !divided, null));
            tokens.add(word);
        }
    }

    /**
     * Takes over the settled explanation of the finished utterance.
     *
     * @param next the words of the next utterance so far
     */
    public void settle(Beam beam, List<String> next, StreamTime at) {
        now = at;
        settled = beam;
        tokens.clear();
        beams.clear();
        divided = !next.isEmpty();
        hear(next);
        show();
    }

    /** Moves the position to another word by hand. */
    public void move(int word) {
        endedAt = -1;
        if (beams.isEmpty()) {
            settled = settled.orAt(word);
        } else {
            beams.set(beams.size() - 1, belief().orAt(word));
        }
        shown = word;
    }

    /** Whether the shown word last changed by reading on, not by a jump. */
    public boolean readOn() {
        return readOn;
    }

    /** How many of the last tokens heard in a row are not in the script. */
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

    /** Checks again whether the line has ended, now that more of the sound is known. */
    public void listen() {
        now = loudness.heardTo();
        show();
    }

    /**
     * The end of the current line, if the line must be over although its last word was not recognised: something was
     * heard in place of that word, or only the room has been heard for a while. It stays over until words say otherwise.
     */
    private OptionalInt lineEnd(PathStep best) {
        int word = graph.wordAt(best.place());
        if (best.place() == endedAt) {
            return OptionalInt.of(graph.firstWord(graph.line(word) + 1));
        }
        endedAt = -1;
        boolean begun = best.kind() != PathStep.Kind.START && !graph.beginsLine(word);
        if (best.kind() == PathStep.Kind.SUBSTITUTION && graph.beginsLine(word) && said()) {
            return OptionalInt.of(word);
        }
        if (begun && BROKEN_OFF.compareTo(loudness.quiet()) <= 0) {
            int next = graph.firstWord(graph.line(word) + 1);
            if (next == word + 1 || (next - word <= MOST_MISHEARD && saidUnheard(word, next))) {
                endedAt = best.place();
                return OptionalInt.of(next);
            }
        }
        return OptionalInt.empty();
    }

    /** Whether there has been voice for about as long as these words take since the position last moved. */
    private boolean saidUnheard(int from, int to) {
        double shortest = 0;
        for (int word = from; word < to; word++) {
            shortest += graph.shortest(word);
        }
        double voice = loudness.voiceAfter(shownSince).seconds();
        return voice >= shortest && voice <= LONGEST_MISHEARD;
    }

    /**
     * How much better than staying, in nats, a jump must explain what was heard. Readers who break off a line usually
     * continue with the next one, so in that case it only has to be the most likely explanation.
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

    /** If no sound is measured, recognised words count as said. */
    private boolean said() {
        return loudness.unknown() || SAID.compareTo(loudness.quiet()) <= 0;
    }

    /**
     * A recogniser that knows the line reports its last word while that word is still being said; until it has been
     * said, it is the word being read.
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

    /** Cost difference between the best explanation without a jump from the shown word and the best explanation. */
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
