package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.PaceText;
import org.junit.jupiter.api.Test;

/** The pace that is measured: what is offered as a target, what it is made the target of, and that it has one figure. */
final class OwnPaceTest {
    private static final int LINES = 20;
    private static final double SECONDS_A_LINE = 3;

    /** Twenty lines of six words. */
    private static final String TEXT = IntStream.range(0, LINES)
            .mapToObj(i -> "Count the spokes of wheel one.")
            .collect(Collectors.joining("\n\n", "", "\n"));

    @Test
    void theMeasuredPaceIsOfferedAndTaken() throws ProblemException {
        SessionState read = settled("", SECONDS_A_LINE);
        int own = OwnPace.offered(read).orElseThrow();
        assertThat(own)
                .isEqualTo(Math.round((float) read.measures().pace().lesson()))
                .isBetween(120, 124);
        SessionState taken = Session.apply(read, new SessionEvent.PaceAimed(s(70), own, PaceSource.OWN));
        assertThat(taken.script().settings().targetPace()).isEqualTo(own);
        assertThat(OwnPace.offered(taken)).isEmpty();
        assertThat(PaceText.target(taken)).isEqualTo(own + " (your own)");
    }

    @Test
    void nothingIsOfferedIfTheScriptSetsAPace() throws ProblemException {
        SessionState read = settled("---\npace: 100\n---\n", SECONDS_A_LINE);
        assertThat(OwnPace.offered(read)).isEmpty();
        SessionState same = Session.apply(read, new SessionEvent.PaceAimed(s(70), 127, PaceSource.OWN));
        assertThat(same.script().settings().targetPace()).isEqualTo(100);
    }

    @Test
    void nothingIsOfferedIfTheCourseSetsAPaceOrItIsMuchTheSame() throws ProblemException {
        SessionState read = settled("", SECONDS_A_LINE);
        assertThat(OwnPace.offered(Session.apply(read, new SessionEvent.PaceAimed(s(70), 90, PaceSource.COURSE))))
                .isEmpty();
        assertThat(OwnPace.offered(settled("", 3.6))).isEmpty();
    }

    @Test
    void anotherTextKeepsTheTargetUnlessItSetsOne() throws ProblemException {
        SessionState own =
                Session.apply(settled("", SECONDS_A_LINE), new SessionEvent.PaceAimed(s(70), 127, PaceSource.OWN));
        SessionState changed = Session.apply(own, new SessionEvent.TextChanged(s(71), TEXT + "\nOne more.\n"));
        assertThat(changed.script().settings().targetPace()).isEqualTo(127);
        SessionState paced = Session.apply(own, new SessionEvent.TextChanged(s(71), "---\npace: 90\n---\n" + TEXT));
        assertThat(paced.script().settings().paceSource()).isEqualTo(PaceSource.SCRIPT);
    }

    /** What the window shows when the last line was read is what the terminal says when all is settled. */
    @Test
    void thePaceAtTheEndOfTheLessonIsTheOneThatStays() throws ProblemException {
        SessionState state = begun("");
        for (int line = 1; line <= LINES; line++) {
            state = Session.apply(
                    state,
                    new SessionEvent.PositionMoved(
                            s(line * SECONDS_A_LINE), new ReadingPosition(line + 1, 1), Mover.VOICE, 6));
        }
        for (int line = 1; line <= LINES; line++) {
            state = Session.apply(state, new SessionEvent.AttemptSettled(s(63), attempt(line, SECONDS_A_LINE)));
        }
        Optional<String> shown = PaceText.measured(state);
        SessionState settled = Session.apply(
                Session.apply(state, new SessionEvent.TakeEnded(s(70), 1, Instant.EPOCH, TakeEnd.CUT)),
                new SessionEvent.TakeSettled(s(70), 1, attempts(SECONDS_A_LINE), List.<Aside>of()));
        assertThat(shown).isPresent().isEqualTo(PaceText.measured(settled));
    }

    private static SessionState settled(String front, double seconds) throws ProblemException {
        return Session.apply(begun(front), new SessionEvent.TakeSettled(s(70), 1, attempts(seconds), List.<Aside>of()));
    }

    private static SessionState begun(String front) throws ProblemException {
        SessionState before =
                Session.begin(ScriptReader.parse(front + TEXT, "wheel.md", Format.MARKDOWN), FatigueLimits.defaults());
        return Session.apply(
                before,
                new SessionEvent.TakeStarted(StreamTime.ZERO, 1, Instant.EPOCH, "a microphone", ReadingPosition.START));
    }

    private static List<Attempt> attempts(double seconds) {
        return IntStream.rangeClosed(1, LINES)
                .mapToObj(line -> attempt(line, seconds))
                .toList();
    }

    /** A line takes all of its seconds but a tenth. */
    private static Attempt attempt(int line, double seconds) {
        return new Attempt(1, line, line, s((line - 1) * seconds), s(line * seconds - 0.1), true, List.of(), List.of());
    }

    private static StreamTime s(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
