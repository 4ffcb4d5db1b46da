package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent.TakeSettled;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class FalseStartsTest {
    private static final Script LESSON = Scripts.of(
            "Turn the wheel slowly and watch the gap beside the brake",
            "A spoke that rings low is loose and wants half a turn");

    @Test
    void speechLikeTheBeginningOfTheNextLineIsAnAttempt() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turned wheels slow lee")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.attempts())
                .extracting(Attempt::ordinal, Attempt::line, Attempt::complete)
                .containsExactly(tuple(1, 1, false), tuple(2, 1, true));
        assertThat(take.attempts().get(0).end())
                .isLessThan(take.attempts().get(1).start());
        assertThat(take.asides()).isEmpty();
    }

    @Test
    void otherSpeechBeforeALineStaysAnAside() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("please give me another minute")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.attempts()).hasSize(1);
        assertThat(take.asides()).extracting(Aside::said).containsExactly("please give me another minute");
    }

    @Test
    void aBeginningThatIsNotReadOnIsAnAside() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turned wheels slow lee")
                .say("a spoke that rings low is loose and wants half a turn")
                .cut();
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(2);
        assertThat(take.asides()).hasSize(1);
    }

    @Test
    void aBeginningThatIsReadOnOnlyLaterIsAnAside() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turned wheels slow lee |")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.attempts()).hasSize(1);
        assertThat(take.asides()).extracting(Aside::said).containsExactly("turned wheels slow lee");
    }

    @Test
    void aVeryShortBeginningIsAnAside() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("tern thy bee")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.asides()).isEmpty();
        take = ReadAloud.of(LESSON)
                .say("tern oh i")
                .say("turn the wheel slowly and watch the gap beside the brake")
                .cut();
        assertThat(take.asides()).extracting(Aside::said).containsExactly("tern oh i");
    }

    /** An ear can give a whole line no time at all; speech after it then begins when the line does. */
    @Test
    void speechAfterALineIsNoFalseStartOfIt() {
        Attempt line = new Attempt(1, 1, 1, StreamTime.ZERO, StreamTime.ZERO, true, List.of(), List.of());
        Aside after = new Aside(1, StreamTime.ZERO, StreamTime.ofSeconds(0.8), "turn the wheel slowly", 1);
        ReadingGraph graph = new ReadingGraph(ScriptPreparer.prepare(LESSON, word -> true));
        FalseStarts.Told told =
                new FalseStarts(graph, new Loudness(StreamTime.ZERO)).tell(List.of(line), List.of(after));
        assertThat(told.attempts()).containsExactly(line);
        assertThat(told.asides()).containsExactly(after);
    }

    @Test
    void attemptsAndAsidesStayInOrderOfTime() {
        TakeSettled take = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("please give me another minute |")
                .say("hay spook hat wrings")
                .say("a spoke that rings low is loose and wants half a turn")
                .say("was that all for today")
                .cut();
        assertThat(take.attempts())
                .extracting(Attempt::ordinal, Attempt::line, Attempt::complete)
                .containsExactly(tuple(1, 1, true), tuple(2, 2, false), tuple(3, 2, true));
        assertThat(take.attempts()).extracting(Attempt::start).isSorted();
        assertThat(take.asides())
                .extracting(Aside::said)
                .containsExactly("please give me another minute", "was that all for today");
    }
}
