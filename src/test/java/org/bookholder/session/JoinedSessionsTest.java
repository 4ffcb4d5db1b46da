package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.List;
import java.util.Map;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Decision.Choice;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class JoinedSessionsTest {
    private static final Script LESSON =
            Scripts.of("Spring comes early.", "Buy a dozen frames.", "Turn them round.", "Frames dry out.");

    /** The lesson when only its last three lines were written. */
    private static final Script LATE = Scripts.of("Buy a dozen frames.", "Turn them round.", "Something else here.");

    private static final Map<Integer, Integer> SAME = Map.of(1, 1, 2, 2, 3, 3, 4, 4);

    /** Two takes: lines 1 and 2 clean, line 3 with a wrong word, line 4 not read. */
    private static SessionState first(Remark... remarks) {
        return read(
                LESSON,
                List.of(
                        rolled(1, 0),
                        settled(complete(1, 1, 1, 3, 1, 2)),
                        cut(1, 10),
                        rolled(2, 10),
                        settled(complete(2, 1, 2, 4, 11, 12)),
                        settled(complete(2, 2, 3, 3, 13, 14, swapped(3, "round", "around"))),
                        cut(2, 20.5)),
                remarks);
    }

    /** One take: the lesson's line 3 clean. */
    private static SessionState second(Remark... remarks) {
        return read(
                LATE,
                List.of(
                        rolled(1, 0),
                        settled(complete(1, 1, 2, 3, 2, 3)),
                        settled(complete(1, 2, 3, 3, 4, 5)),
                        new SessionEvent.AsidesHeard(s(6), 1, List.of(new Aside(1, s(5.2), s(6), "well", 3))),
                        cut(1, 9)),
                remarks);
    }

    private static SessionState read(Script script, List<SessionEvent> events, Remark... remarks) {
        SessionState state = Session.apply(Session.begin(script, FatigueLimits.defaults()), events);
        for (Remark remark : remarks) {
            state = Session.apply(state, new SessionEvent.Remarked(state.now(), remark));
        }
        return state;
    }

    private static SessionState joined(SessionState first, SessionState second) {
        return JoinedSessions.of(
                        LESSON,
                        List.of(first, second),
                        List.of(SAME, Map.of(1, 2, 2, 3)),
                        Map.of(1, 0, 2, 0, 3, 1, 4, 0))
                .state();
    }

    private static List<Integer> pickups(SessionState state) {
        return state.lines().pickups().stream().map(LineNotes::line).toList();
    }

    @Test
    void takesAreCountedOnAndTimesFollowEachOther() {
        SessionState joined = joined(first(), second());
        assertThat(joined.takes().all().stream().map(Take::number)).containsExactly(1, 2, 3);
        // 20.5 s of the first session, and so much more that the second begins at a whole second.
        assertThat(joined.takes().last().start()).isEqualTo(s(22));
        assertThat(joined.takes().last().end()).isEqualTo(s(31));
        Attempt used = joined.lines().notes(3).best().orElseThrow();
        assertThat(used.take()).isEqualTo(3);
        assertThat(used.start()).isEqualTo(s(24));
        assertThat(used.words().get(0).start()).isEqualTo(s(24));
        assertThat(joined.lines().notes(3).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(joined.lines().notes(3).attempts()).hasSize(2).contains(used);
        assertThat(pickups(joined)).isEmpty();
        assertThat(joined.lines().notes(4).reached()).isFalse();
    }

    /** The line after which it was said is not in the lesson any more. */
    @Test
    void anAsideFollowsTheLineBeforeIt() {
        assertThat(joined(first(), second()).lines().asides())
                .containsExactly(
                        new Aside(3, s(26), s(27), "Something else here.", 3), new Aside(3, s(27.2), s(28), "well", 3));
    }

    @Test
    void whatWasWishedLaterOfALineThatIsTakenFromAnEarlierSessionCounts() {
        SessionState again = joined(first(), second(new Remark.Decided(1, Choice.RECORD_AGAIN, 0, 0)));
        assertThat(pickups(again)).containsExactly(2);
        SessionState marked = joined(first(), second(new Remark.Noted(1, "a door", true)));
        assertThat(pickups(marked)).containsExactly(2);
        assertThat(marked.lines().notes(2).openMarks()).containsExactly("a door");
        SessionState out = joined(first(), second(new Remark.Decided(1, Choice.LEAVE_OUT, 0, 0)));
        assertThat(out.lines().notes(2).leftOut()).isTrue();
    }

    @Test
    void whatWasWishedEarlierOfALineThatWasReadCleanSinceIsDone() {
        SessionState joined = joined(
                first(new Remark.Decided(3, Choice.RECORD_AGAIN, 0, 0), new Remark.Noted(3, "louder", true)), second());
        assertThat(pickups(joined)).isEmpty();
        assertThat(joined.lines().notes(3).openMarks()).isEmpty();
    }

    @Test
    void aDecisionToUseAnAttemptHoldsIfItsSessionIsUsed() {
        SessionState kept = first(new Remark.Decided(3, Choice.KEEP, 2, 2));
        SessionState joined = JoinedSessions.of(
                        LESSON,
                        List.of(kept, second()),
                        List.of(SAME, Map.of(1, 2, 2, 3)),
                        Map.of(1, 0, 2, 0, 3, 0, 4, 0))
                .state();
        assertThat(joined.lines().notes(3).kept()).isTrue();
        assertThat(joined.lines().notes(3).best()).map(Attempt::take).contains(2);
        assertThat(joined(kept, second()).lines().notes(3).decision()).isEmpty();
    }

    @Test
    void placesSetByHandAreThoseOfTheSessionThatIsUsed() throws ProblemException {
        SessionState second = second(
                new Remark.Filmed(2, new FilmChange.CutAt(1, 1, FilmChoices.Edge.IN, s(2.25))),
                new Remark.Filmed(1, new FilmChange.CutAt(1, 1, FilmChoices.Edge.IN, s(2.25))));
        SessionState joined = joined(first(), second);
        assertThat(joined.remarks().film(2)).isEqualTo(FilmChoices.NONE);
        assertThat(CutPlanner.plan(joined, CutRules.defaults(), TakeSound.NONE).clips().stream()
                        .filter(clip -> clip.firstLine() == 3)
                        .map(clip -> clip.in()))
                .containsExactly(s(24.25));
    }

    /** Read in one go with a sentence between two lines that was taken out of the text since: no clip may run over it. */
    @Test
    void whatWasReadOfALineThatTheLessonHasNotAnyMoreIsNotUsed() throws ProblemException {
        SessionState before = read(
                Scripts.of("Spring comes early.", "Mind the dog.", "Buy a dozen frames."),
                List.of(
                        rolled(1, 0),
                        settled(complete(1, 1, 1, 3, 1, 2)),
                        settled(complete(1, 2, 2, 3, 2.2, 3.2)),
                        settled(complete(1, 3, 3, 4, 3.4, 4.4)),
                        cut(1, 6)));
        SessionState joined = JoinedSessions.of(
                        LESSON, List.of(before), List.of(Map.of(1, 1, 3, 2)), Map.of(1, 0, 2, 0))
                .state();
        assertThat(joined.lines().asides()).containsExactly(new Aside(1, s(2.2), s(3.2), "Mind the dog.", 1));
        assertThat(CutPlanner.plan(joined, CutRules.defaults(), TakeSound.NONE).clips())
                .allSatisfy(clip -> assertThat(clip.in().isBefore(s(2.7)) && s(2.7).isBefore(clip.out()))
                        .isFalse())
                .hasSize(2);
    }

    @Test
    void aLineThatIsNewSinceTheLastSessionIsToBeReadIfALaterOneWasReached() {
        SessionState late = read(LATE, List.of(rolled(1, 0), settled(complete(1, 1, 2, 3, 2, 3)), cut(1, 5)));
        SessionState joined = JoinedSessions.of(LESSON, List.of(late), List.of(Map.of(1, 2, 2, 3)), Map.of(2, 0, 3, 0))
                .state();
        assertThat(joined.lines().notes(1).reached()).isTrue();
        assertThat(pickups(joined)).contains(1).doesNotContain(4);
    }
}
