package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.word;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.graph.PathCosts;
import org.bookholder.follow.graph.PathSpan;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.graph.ViterbiTracker;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Steps are passed on once, in order, and only when no other explanation is left. */
final class SettlingPathTest {
    private static final ReadingGraph GRAPH = new ReadingGraph(ReadAloud.known(Scripts.of(
            "turn the wheel slowly and watch the gap beside the brake",
            "a spoke that rings low is loose and wants half a turn",
            "turn the wheel again and count the threads near the valve")));

    private final SettlingPath path = new SettlingPath(new ViterbiTracker(GRAPH, PathCosts.standard()), 0, s(0));
    private final List<PathStep> passedOn = new ArrayList<>();
    private double now;

    @Test
    void allStepsArePassedOnOnceAndInOrder() {
        String line = "turn the wheel slowly and watch the gap beside the brake";
        for (String said : line.split(" ", -1)) {
            hear(said);
        }
        passedOn.addAll(path.finish());
        assertThat(texts(passedOn)).isEqualTo(line);
        assertThat(path.finish()).isEmpty();
    }

    @Test
    void whatCouldStillMeanAnotherPlaceIsNotPassedOn() {
        hear("turn");
        assertThat(passedOn).as("line 3 begins with the same words").isEmpty();
        assertThat(texts(path.ahead())).isEqualTo("turn");
        assertThat(texts(path.ahead())).as("looking ahead passes nothing on").isEqualTo("turn");
        hear("the");
        hear("wheel");
        assertThat(texts(path.ahead())).endsWith("wheel");
        int before = passedOn.size();
        for (String said : "slowly and watch the gap beside the brake a spoke that rings".split(" ", -1)) {
            hear(said);
        }
        assertThat(passedOn.size()).isGreaterThan(before);
        assertThat(texts(passedOn)).startsWith("turn the wheel slowly");
        assertThat(texts(passedOn) + " " + texts(path.ahead()))
                .isEqualTo("turn the wheel slowly and watch the gap beside the brake a spoke that rings");
    }

    @Test
    void eachUtteranceMayHaveSeveralWordsOrNone() {
        assertThat(path.hear(List.of())).isEmpty();
        passedOn.addAll(path.hear(List.of(word("turn", 1, 1.3), word("the", 1.3, 1.6), word("wheel", 1.6, 2))));
        passedOn.addAll(path.finish());
        assertThat(texts(passedOn)).isEqualTo("turn the wheel");
        assertThat(path.lastEnd()).isEqualTo(s(2));
    }

    @Test
    void aMoveByHandContinuesThere() {
        hear("turn");
        path.move(GRAPH.firstWord(1));
        hear("a");
        hear("spoke");
        assertThat(GRAPH.wordAt(path.beam().best().place())).isEqualTo(GRAPH.firstWord(1) + 2);
    }

    /** A jump without a pause before it costs more. */
    @Test
    void aPauseIsCountedFromTheWordBefore() {
        hear("turn");
        double running = costOfJump(0.2);
        double afterAPause = costOfJump(0.25);
        assertThat(running - afterAPause).isEqualTo(PathCosts.standard().running());
    }

    private double costOfJump(double gap) {
        SettlingPath other = new SettlingPath(new ViterbiTracker(GRAPH, PathCosts.standard()), 0, s(0));
        other.hear(List.of(word("turn", 1, 2)));
        other.hear(List.of(word("a", 2 + gap, 3 + gap)));
        return other.beam().steps().stream()
                .filter(step -> step.node() >= 0 && GRAPH.wordOf(step.node()) == GRAPH.firstWord(1))
                .mapToDouble(PathStep::cost)
                .min()
                .orElseThrow();
    }

    private void hear(String text) {
        passedOn.addAll(path.hear(List.of(word(text, now, now + 0.3))));
        now += 0.3;
    }

    private static String texts(List<PathStep> steps) {
        return String.join(
                " ",
                steps.stream()
                        .filter(step -> step.heard() != null)
                        .map(PathSpan::token)
                        .map(RecognizedWord::text)
                        .toList());
    }
}
