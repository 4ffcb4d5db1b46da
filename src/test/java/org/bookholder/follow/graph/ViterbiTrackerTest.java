package org.bookholder.follow.graph;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.bookholder.follow.graph.PathStep.Kind;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.Script;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** What each departure from the script costs, with costs that can be told apart. */
final class ViterbiTrackerTest {
    private static final double MATCH = 0.01;
    private static final double SUBSTITUTION = 3;
    private static final double INSERTION = 5;
    private static final double DELETION = 4;
    private static final double SHORT_DELETION = 2;
    private static final double UNHEARABLE = 0.5;
    private static final double LEAVE = 6;
    private static final double COME_BACK = 1;
    private static final double UNKNOWN = 1.5;
    private static final double JUMP = 7;
    private static final double JUMP_AFTER_ASIDE = 5.5;
    private static final double FARTHER = 1.3;
    private static final double INSIDE = 3;
    private static final double RUNNING = 2;
    private static final Offset<Double> EXACT = within(1e-9);

    private static final Script SCRIPT = Scripts.of(
            "alpha bravo charlie", "delta echo foxtrot golf", "hotel in kilo lima", "mike november oscar papa");

    private final ReadingGraph graph = new ReadingGraph(ReadAloud.known(SCRIPT));
    private final ViterbiTracker tracker = tracker(graph, 100);

    @Test
    void wordsReadAsWrittenCostAMatchEach() {
        PathStep best = hear(0, "alpha bravo charlie").best();
        assertThat(best.place()).isEqualTo(3);
        assertThat(best.kind()).isEqualTo(Kind.MATCH);
        assertThat(best.cost()).isEqualTo(3 * MATCH, EXACT);
    }

    @Test
    void aWordThatWasNotHeardCostsADeletionAndAShortOneLess() {
        assertThat(hear(0, "alpha charlie").best().cost()).isEqualTo(2 * MATCH + DELETION, EXACT);
        assertThat(hear(7, "hotel kilo").best().cost()).isEqualTo(2 * MATCH + SHORT_DELETION, EXACT);
    }

    @Test
    void upToFourWordsArePassedOver() {
        assertThat(step(hear(0, "echo"), 5, Kind.MATCH).cost())
                .as("a jump is cheaper than four deletions")
                .isLessThan(4 * DELETION);
        ViterbiTracker staying = new ViterbiTracker(graph, costs(60, 100));
        assertThat(step(hear(staying, 0, "echo"), 5, Kind.MATCH).cost()).isEqualTo(4 * DELETION + MATCH, EXACT);
        assertThat(step(hear(staying, 0, "foxtrot"), 6, Kind.MATCH).jumped()).isTrue();
    }

    @Test
    void anotherWordInPlaceOfOneCostsItsSurprise() {
        double surprise = Math.log(15);
        assertThat(graph.surprise(graph.token("golf"))).isEqualTo(surprise, EXACT);
        assertThat(step(hear(0, "golf"), 1, Kind.SUBSTITUTION).cost()).isEqualTo(SUBSTITUTION + surprise, EXACT);
        assertThat(step(hear(0, "[unk]"), 1, Kind.SUBSTITUTION).cost()).isEqualTo(SUBSTITUTION + UNKNOWN, EXACT);
    }

    @Test
    void anAddedWordLeavesThePlaceAsItIs() {
        assertThat(step(hear(0, "alpha [unk]"), 1, Kind.INSERTION).cost())
                .isEqualTo(MATCH + INSERTION + UNKNOWN, EXACT);
    }

    @Test
    void speechThatIsNotInTheScriptIsLeftAndComeBackFrom() {
        assertThat(step(hear(0, "alpha [unk] [unk]"), 1, Kind.OFF).cost())
                .as("it is left once")
                .isEqualTo(MATCH + LEAVE + 2 * UNKNOWN, EXACT);
        Beam after = hear(0, "alpha [unk] [unk] [unk] bravo");
        assertThat(step(after, 2, Kind.MATCH).cost()).isEqualTo(2 * MATCH + LEAVE + 3 * UNKNOWN + COME_BACK, EXACT);
    }

    @Test
    void aJumpToALinesBeginningCostsItsLength() {
        assertThat(step(hear(0, "alpha hotel"), 8, Kind.MATCH).cost())
                .isEqualTo(2 * MATCH + JUMP + RUNNING + 1 + FARTHER * Math.log(3), EXACT);
        assertThat(step(hear(0, "alpha delta"), 4, Kind.MATCH).jumped())
                .as("two deletions are cheaper than a jump to the next line")
                .isFalse();
        assertThat(step(hear(11, "mike alpha"), 1, Kind.MATCH).cost())
                .as("backwards it is as far")
                .isEqualTo(2 * MATCH + JUMP + RUNNING + 1 + FARTHER * Math.log(4), EXACT);
    }

    @Test
    void aJumpAfterAPauseIsCheaper() {
        Beam first = tracker.hear(new Beam(PathStep.start(0)), "alpha", false, null);
        Beam second = tracker.hear(first, "hotel", true, null);
        assertThat(step(second, 8, Kind.MATCH).cost()).isEqualTo(2 * MATCH + JUMP + 1 + FARTHER * Math.log(3), EXACT);
    }

    @Test
    void aJumpIntoALineCostsMoreTheFartherInItIsButNotWithoutEnd() {
        double base = MATCH + JUMP + RUNNING + 1;
        assertThat(step(hear(0, "november"), 13, Kind.MATCH).cost()).isEqualTo(base + FARTHER * Math.log(4) + 2, EXACT);
        assertThat(step(hear(0, "papa"), 15, Kind.MATCH).cost())
                .isEqualTo(base + FARTHER * Math.log(4) + INSIDE, EXACT);
    }

    @Test
    void goingBackWithinALineCostsALittleForEachWord() {
        assertThat(step(hear(3, "delta echo foxtrot echo"), 5, Kind.MATCH).cost())
                .isEqualTo(4 * MATCH + JUMP + RUNNING + 2 + 2 * 0.15, EXACT);
        assertThat(step(hear(3, "delta echo foxtrot delta"), 4, Kind.MATCH).cost())
                .as("the line's beginning is a place to begin again")
                .isEqualTo(4 * MATCH + JUMP + RUNNING + 1, EXACT);
    }

    @Test
    void aWordThatTheRecogniserCannotWriteIsPassedOverAndMayBeHeardAsAnything() {
        ViterbiTracker unhearing = tracker(new ReadingGraph(unhearable("bravo")), 100);
        assertThat(hear(unhearing, 0, "alpha charlie").best().cost()).isEqualTo(2 * MATCH + UNHEARABLE, EXACT);
        Beam beam = hear(unhearing, 0, "alpha [unk]");
        assertThat(step(beam, 1, Kind.INSERTION).cost()).isEqualTo(2 * MATCH + UNKNOWN, EXACT);
        assertThat(hear(unhearing, 0, "alpha [unk] charlie").best().cost())
                .isEqualTo(3 * MATCH + UNKNOWN + UNHEARABLE, EXACT);
    }

    @Test
    void ofAWordThatIsInEveryLineTheNearestPlacesAreTried() {
        String[] lines = IntStream.range(0, 200).mapToObj(n -> "same word" + n).toArray(String[]::new);
        ReadingGraph same = new ReadingGraph(ReadAloud.known(Scripts.of(lines)));
        Beam beam = hear(tracker(same, 1000), 200, "word100 same");
        List<Integer> reached = beam.steps().stream()
                .filter(step -> step.jumped() && step.kind() == Kind.MATCH)
                .map(step -> same.line(same.wordOf(step.node())))
                .sorted()
                .toList();
        assertThat(reached).hasSizeBetween(40, 48).contains(80, 99, 103, 120).doesNotContain(0, 70, 130, 199);
        Beam atTheEnd = hear(tracker(same, 1000), 398, "same word199 same");
        assertThat(atTheEnd.steps().stream().filter(PathStep::jumped)).isNotEmpty();
    }

    @Test
    void explanationsThatCostTooMuchAreDropped() {
        ViterbiTracker narrow = tracker(graph, 5);
        Beam beam = hear(narrow, 0, "alpha bravo");
        assertThat(beam.steps()).allMatch(step -> step.cost() <= beam.best().cost() + 5);
        assertThat(hear(0, "alpha bravo").steps().size())
                .isGreaterThan(beam.steps().size());
    }

    @Test
    void aPlaceThatAHandChoseCostsNothing() {
        Beam beam = hear(0, "alpha bravo").orAt(11);
        assertThat(beam.best().place()).isEqualTo(11);
        assertThat(beam.best().cost()).isEqualTo(2 * MATCH, EXACT);
        Beam next = tracker.hear(beam, "mike", false, null);
        assertThat(next.best().place()).isEqualTo(12);
        assertThat(step(tracker.hear(beam, "charlie", false, null), 3, Kind.MATCH)
                        .cost())
                .as("the voice may go on where it was")
                .isEqualTo(3 * MATCH, EXACT);
    }

    @Test
    void aSpanHasItsWords() {
        RecognizedWord word = new RecognizedWord("alpha", StreamTime.ofSeconds(1), StreamTime.ofSeconds(2), 1);
        Beam beam = tracker.hear(new Beam(PathStep.start(0)), "alpha", false, word);
        PathSpan span = new PathSpan(0, List.of(beam.best()));
        assertThat(span.heard()).containsExactly(word);
        assertThat(span.start().seconds()).isEqualTo(1);
        assertThat(span.end().seconds()).isEqualTo(2);
    }

    private static PreparedScript unhearable(String unknown) {
        PreparedScript known = ReadAloud.known(SCRIPT);
        return new PreparedScript(
                SCRIPT,
                known.lines().stream()
                        .map(line -> line.stream()
                                .map(word -> word.word().plain().equals(unknown)
                                        ? new PreparedWord(word.word(), List.of(), true)
                                        : word)
                                .toList())
                        .toList(),
                List.of());
    }

    private Beam hear(int place, String tokens) {
        return hear(tracker, place, tokens);
    }

    private static Beam hear(ViterbiTracker tracker, int place, String tokens) {
        Beam beam = new Beam(PathStep.start(place));
        for (String token : tokens.split(" ", -1)) {
            beam = tracker.hear(beam, token, false, null);
        }
        return beam;
    }

    /** The explanation that leads to a place in a given way. */
    private static PathStep step(Beam beam, int place, Kind kind) {
        Optional<PathStep> step = beam.steps().stream()
                .filter(s -> s.place() == place && s.kind() == kind)
                .findFirst();
        assertThat(step).as(kind + " to place " + place).isPresent();
        return step.orElseThrow();
    }

    private static ViterbiTracker tracker(ReadingGraph graph, double width) {
        return new ViterbiTracker(graph, costs(JUMP, width));
    }

    private static PathCosts costs(double jump, double width) {
        return new PathCosts(
                MATCH,
                SUBSTITUTION,
                INSERTION,
                DELETION,
                SHORT_DELETION,
                UNHEARABLE,
                LEAVE,
                COME_BACK,
                UNKNOWN,
                jump,
                JUMP_AFTER_ASIDE,
                FARTHER,
                INSIDE,
                RUNNING,
                width);
    }
}
