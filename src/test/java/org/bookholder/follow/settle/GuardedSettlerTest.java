package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.word;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.graph.PathStep;
import org.bookholder.follow.graph.ReadingGraph;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** What is left of a take when its settler fails. Settlers are told here what to find. */
final class GuardedSettlerTest {
    private static final ReadingGraph GRAPH =
            new ReadingGraph(ReadAloud.known(Scripts.of("alpha bravo", "charlie delta", "echo foxtrot", "golf hotel")));

    private final List<Told> settlers = new ArrayList<>();
    private boolean noMore;
    private final GuardedSettler guarded = new GuardedSettler(GRAPH, 3, new Loudness(s(10)), s(10), 0, this::begin);

    @Test
    void whatASettlerFindsIsTold() {
        first().finds(complete(3, 1, 1, 2, 11, 12));
        assertThat(hear(13)).containsExactly(new FollowEvent.AttemptSettled(s(13), complete(3, 1, 1, 2, 11, 12)));
    }

    @Test
    void attemptsAfterAFaultAreNumberedOnFromThoseBefore() {
        first().finds(complete(3, 1, 1, 2, 11, 12), complete(3, 2, 2, 2, 12, 13));
        hear(14);
        fail(15);
        last().finds(complete(3, 1, 3, 2, 16, 17));
        assertThat(hear(18)).containsExactly(new FollowEvent.AttemptSettled(s(18), complete(3, 3, 3, 2, 16, 17)));
        fail(19);
        last().finds(complete(3, 1, 4, 2, 20, 21));
        assertThat(hear(22)).containsExactly(new FollowEvent.AttemptSettled(s(22), complete(3, 4, 4, 2, 20, 21)));
    }

    @Test
    void theTakeHasTheAttemptsOfAllItsSettlersInOneCount() {
        first().finds(complete(3, 2, 1, 2, 11, 12));
        hear(13);
        fail(14);
        last().end = new FollowEvent.TakeSettled(
                s(20), 3, List.of(complete(3, 1, 3, 2, 15, 16)), List.of(new Aside(3, s(17), s(18), "so what", 3)));
        FollowEvent.TakeSettled take =
                (FollowEvent.TakeSettled) guarded.finish(s(20)).get(0);
        assertThat(take.attempts())
                .extracting(Attempt::ordinal, Attempt::line)
                .containsExactly(tuple(1, 1), tuple(2, 3));
        assertThat(take.asides()).hasSize(1);
        assertThat(take.at()).isEqualTo(s(20));
    }

    @Test
    void aFaultAtTheEndKeepsWhatWasToldAndSaysSoFirst() {
        first().finds(complete(3, 1, 1, 2, 11, 12));
        hear(13);
        first().fails = true;
        List<FollowEvent> events = guarded.finish(s(20));
        assertThat(events).hasSize(2);
        assertThat(((FollowEvent.NotJudged) events.get(0)).stretch())
                .isEqualTo(new UnjudgedStretch(3, s(12), s(13), List.of()));
        assertThat(((FollowEvent.TakeSettled) events.get(1)).attempts()).containsExactly(complete(3, 1, 1, 2, 11, 12));
    }

    /** Words are numbered from 0, two in a line. */
    @Test
    void theStretchNamesTheLinesThatTheVoiceReadOnThroughWithoutAVerdict() {
        guarded.shown(0, 6, true);
        first().finds(complete(3, 1, 2, 2, 11, 12));
        hear(13);
        assertThat(fail(14).stretch()).isEqualTo(new UnjudgedStretch(3, s(12), s(14), List.of(1, 3)));
    }

    @Test
    void aJumpNamesOnlyTheLineOfTheWordBeforeItsTarget() {
        guarded.shown(0, 6, false);
        assertThat(fail(14).stretch()).isEqualTo(new UnjudgedStretch(3, s(10), s(14), List.of(3)));
    }

    @Test
    void aJumpToTheBeginningNamesNoLine() {
        guarded.shown(5, 0, false);
        assertThat(fail(14).stretch().lines()).isEmpty();
    }

    @Test
    void theNextFaultNamesOnlyWhatCameSince() {
        guarded.shown(0, 2, true);
        fail(14);
        guarded.shown(2, 4, true);
        assertThat(fail(16).stretch()).isEqualTo(new UnjudgedStretch(3, s(14), s(16), List.of(2)));
        noMore = true;
        guarded.shown(4, 6, true);
        fail(18);
        assertThat(fail(20).stretch().lines()).isEmpty();
    }

    @Test
    void theNextSettlerBeginsWhereTheSoundWasAndAtTheWordShown() {
        fail(14);
        assertThat(last().start).isEqualTo(s(14));
        assertThat(last().word).isEqualTo(5);
    }

    @Test
    void theNextSettlerHearsOnlyWhatWasSaidSince() {
        guarded.hear(words(13, word("alpha", 11, 12), word("bravo", 12, 15)), 0);
        assertThat(first().heard.get(0).words()).hasSize(2);
        fail(14);
        guarded.hear(words(18, word("alpha", 13, 14), word("bravo", 13.5, 14.5), word("charlie", 15, 16)), 0);
        assertThat(last().heard).singleElement().satisfies(heard -> {
            assertThat(heard.words()).extracting(RecognizedWord::text).containsExactly("bravo", "charlie");
            assertThat(heard.heardTo()).isEqualTo(s(18));
            assertThat(heard.ear()).isEqualTo(EarKind.SCRIPT);
        });
    }

    /** Until a fault no word is kept from a settler, whatever times an ear gives it. */
    @Test
    void theFirstSettlerHearsAllWords() {
        guarded.hear(words(18, word("alpha", 8, 9), word("bravo", 13.5, 14.5)), 0);
        assertThat(first().heard.get(0).words()).hasSize(2);
    }

    @Test
    void aHoldGoesOnWithTheNextSettlerUntilItIsOver() {
        guarded.hold(s(12), 1);
        assertThat(first().acts).containsExactly("hold " + s(12).ticks());
        FollowEvent.NotJudged fault = fail(14);
        assertThat(fault.log()).contains("hold " + s(12).ticks());
        assertThat(last().acts).containsExactly("hold " + s(14).ticks());
        assertThat(fail(15).log()).as("the log of the next one").contains("hold " + s(14).ticks());
        guarded.resume(s(16), 1);
        fail(18);
        assertThat(last().acts).isEmpty();
    }

    @Test
    void aMoveIsPassedOnAndAFaultInItBeginsThere() {
        assertThat(guarded.move(s(12), 4)).isEmpty();
        assertThat(first().acts).containsExactly("move 4");
        first().fails = true;
        List<FollowEvent> events = guarded.move(s(13), 2);
        assertThat(events).singleElement().isInstanceOf(FollowEvent.NotJudged.class);
        assertThat(((FollowEvent.NotJudged) events.get(0)).log()).contains("move 4", "move 2");
        assertThat(last().word).isEqualTo(2);
    }

    @Test
    void holdAndResumeAreToldNothingUnlessTheyFail() {
        assertThat(guarded.hold(s(12), 1)).isEmpty();
        assertThat(guarded.resume(s(13), 1)).isEmpty();
        assertThat(first().acts).containsExactly("hold " + s(12).ticks(), "resume " + s(13).ticks());
        first().fails = true;
        assertThat(guarded.hold(s(14), 1)).hasSize(1);
        last().fails = true;
        assertThat(guarded.resume(s(15), 1)).hasSize(1);
    }

    @Test
    void whatIsFoundInAPauseIsToldWithTheTimeOfThePause() {
        first().finds(complete(3, 1, 1, 2, 11, 12));
        assertThat(guarded.quiet(s(15), 1))
                .containsExactly(new FollowEvent.AttemptSettled(s(15), complete(3, 1, 1, 2, 11, 12)));
        first().fails = true;
        assertThat(guarded.quiet(s(16), 1)).singleElement().isInstanceOf(FollowEvent.NotJudged.class);
    }

    @Test
    void theBeamIsThatOfTheSettlerAtWork() {
        assertThat(guarded.beam()).isSameAs(first().beam);
        fail(14);
        assertThat(guarded.beam()).isSameAs(last().beam).isNotSameAs(first().beam);
    }

    private List<FollowEvent> hear(double to) {
        return guarded.hear(words(to), 5);
    }

    private FollowEvent.NotJudged fail(double to) {
        last().fails = true;
        List<FollowEvent> events = hear(to);
        assertThat(events).hasSize(1);
        assertThat(events.get(0).at()).isEqualTo(s(to));
        return (FollowEvent.NotJudged) events.get(0);
    }

    private static Hypothesis.Final words(double to, RecognizedWord... words) {
        return new Hypothesis.Final(EarKind.SCRIPT, s(to), Arrays.asList(words));
    }

    private Told first() {
        return settlers.get(0);
    }

    private Told last() {
        return settlers.get(settlers.size() - 1);
    }

    private Settler begin(StreamTime start, int word) {
        if (noMore) {
            throw new IllegalStateException("planted");
        }
        Told told = new Told(start, word);
        settlers.add(told);
        return told;
    }

    /** Finds what it was told to find, or fails. */
    private static final class Told implements Settler {
        private final StreamTime start;
        private final int word;
        private final Beam beam;
        private final List<Hypothesis.Final> heard = new ArrayList<>();
        private final List<String> acts = new ArrayList<>();
        private List<Attempt> found = List.of();
        private FollowEvent.TakeSettled end = new FollowEvent.TakeSettled(s(0), 3, List.of(), List.of());
        private boolean fails;

        Told(StreamTime start, int word) {
            this.start = start;
            this.word = word;
            beam = new Beam(PathStep.start(word));
        }

        void finds(Attempt... attempts) {
            found = Arrays.asList(attempts);
        }

        private void act(String act) {
            if (fails) {
                throw new IllegalStateException("planted");
            }
            acts.add(act);
        }

        private List<Attempt> taken() {
            if (fails) {
                throw new IllegalStateException("planted");
            }
            List<Attempt> taken = found;
            found = List.of();
            return taken;
        }

        @Override
        public Beam beam() {
            return beam;
        }

        @Override
        public List<Attempt> hear(Hypothesis.Final words) {
            heard.add(words);
            return taken();
        }

        @Override
        public List<Attempt> quiet(StreamTime to) {
            return taken();
        }

        @Override
        public List<Aside> asides() {
            return List.of();
        }

        @Override
        public void move(int to) {
            act("move " + to);
        }

        @Override
        public void hold(StreamTime at) {
            act("hold " + at.ticks());
        }

        @Override
        public void resume(StreamTime at) {
            act("resume " + at.ticks());
        }

        @Override
        public FollowEvent.TakeSettled finish(StreamTime at) {
            act("finish");
            return end;
        }
    }
}
