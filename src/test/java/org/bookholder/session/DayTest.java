package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Measured;
import org.bookholder.course.RecordedSession;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.BreakAdvice.Reason;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Breaks and stumbling are counted over the day, whatever its sessions. */
final class DayTest {
    private static final Instant MORNING = Instant.parse("2026-03-02T09:00:00Z");
    private static final Script SCRIPT = Scripts.sized(100, 100, 20);
    private static final FatigueLimits LIMITS = FatigueLimits.defaults();

    private final List<SessionState> sessions = new ArrayList<>();
    private Instant time = MORNING;
    private Optional<DaySoFar> day = Optional.empty();

    /** Voice rest is advised at 35 minutes: Titze, Svec and Popolo 2003. The sixth lesson of six minutes reaches it. */
    @Test
    void sixLessonsOfSixMinutesReachTheAdviceAtTheirSum() {
        for (int lesson = 1; lesson <= 5; lesson++) {
            read(Duration.ofMinutes(6));
            pass(Duration.ofMinutes(2));
            assertThat(urgency(Reason.VOICE))
                    .as("after lesson %d", lesson)
                    .isEqualTo(lesson < 5 ? Urgency.NONE : Urgency.COMING);
        }
        SessionState sixth = begin();
        sixth = at(sixth, Duration.ofMinutes(5).minusSeconds(1));
        assertThat(advice(sixth, Reason.VOICE).urgency()).isEqualTo(Urgency.COMING);
        assertThat(advice(sixth, Reason.VOICE).left()).isEqualTo(Duration.ofSeconds(1));
        sixth = at(sixth, Duration.ofMinutes(5));
        assertThat(advice(sixth, Reason.VOICE).urgency()).isEqualTo(Urgency.DUE);
        // The gaps count as time at the screen: 5 x (6 + 2) + 5.
        assertThat(sixth.measures().fatigue().sinceBreak()).isEqualTo(Duration.ofMinutes(45));
        assertThat(sixth.measures().fatigue().onCamera()).isEqualTo(Duration.ofMinutes(35));
    }

    /** After 5 minutes of rest the pitch of tired readers was back: the rest counts as a break between lessons as within one. */
    @ParameterizedTest
    @CsvSource({"4, 18", "5, 6", "10, 6"})
    void aRestBetweenLessonsCountsByItsLength(int rest, int readingSinceBreak) {
        read(Duration.ofMinutes(12));
        pass(Duration.ofMinutes(rest));
        SessionState last = read(Duration.ofMinutes(6));
        assertThat(last.measures().fatigue().readingSinceBreak()).isEqualTo(Duration.ofMinutes(readingSinceBreak));
        assertThat(last.measures().fatigue().reading()).isEqualTo(Duration.ofMinutes(18));
    }

    @ParameterizedTest
    @CsvSource({"239, 90", "240, 30"})
    void aRestOfFourHoursBeginsANewDay(int rest, int reading) {
        read(Duration.ofMinutes(60));
        pass(Duration.ofMinutes(rest));
        assertThat(read(Duration.ofMinutes(30)).measures().fatigue().reading()).isEqualTo(Duration.ofMinutes(reading));
    }

    @Test
    void midnightChangesNothing() {
        time = Instant.parse("2026-03-02T23:50:00Z");
        read(Duration.ofMinutes(20));
        pass(Duration.ofMinutes(1));
        read(Duration.ofMinutes(15));
        assertThat(urgency(Reason.VOICE)).isEqualTo(Urgency.DUE);
    }

    @Test
    void aTakeThatAKillBrokeOffCountsAsFarAsItWasRecorded() {
        SessionState killed = at(begin(), Duration.ofMinutes(20));
        time = time.plus(Duration.ofMinutes(20));
        day = killed.day();
        pass(Duration.ofMinutes(1));
        read(Duration.ofMinutes(15));
        assertThat(urgency(Reason.VOICE)).isEqualTo(Urgency.DUE);
    }

    @Test
    void limitsThatWereChangedInBetweenHoldForTheWholeDay() {
        read(Duration.ofMinutes(12));
        pass(Duration.ofMinutes(1));
        FatigueLimits stricter = new FatigueLimits(
                Limit.ofMinutes(10, 15, 20),
                LIMITS.screen(),
                LIMITS.reading(),
                LIMITS.onCamera(),
                LIMITS.realBreak(),
                LIMITS.recovery());
        SessionState next = at(begin(stricter), Duration.ofMinutes(3));
        assertThat(advice(next, Reason.VOICE).urgency()).isEqualTo(Urgency.DUE);
    }

    @Test
    void aSessionThatGoesOnAfterAnotherOneCountsThatToo() {
        SessionState first = read(Duration.ofMinutes(20));
        pass(Duration.ofMinutes(1));
        read(Duration.ofMinutes(10));
        pass(Duration.ofMinutes(1));
        SessionState again = Session.apply(
                first,
                List.of(
                        new SessionEvent.Opened(first.now(), time, "Lesson", "lesson.md", ""),
                        new SessionEvent.DayCarried(first.now(), day.orElseThrow()),
                        rolled(first.now(), 2)));
        again = at(again, first.now().toDuration().plusMinutes(5));
        assertThat(again.measures().fatigue().reading()).isEqualTo(Duration.ofMinutes(35));
        assertThat(advice(again, Reason.VOICE).urgency()).isEqualTo(Urgency.DUE);
    }

    /** The first twenty minutes are those of the day, so that stumbling speaks in the third lesson of ten minutes. */
    @Test
    void stumblingIsComparedWithTheDaysFirstTwentyMinutes() {
        readLines(10, 0);
        pass(Duration.ofMinutes(2));
        readLines(10, 0);
        pass(Duration.ofMinutes(2));
        assertThat(urgency(Reason.STUMBLING)).isEqualTo(Urgency.NONE);
        SessionState third = readLines(10, 3);
        assertThat(third.measures().fatigue().baselineFluffs()).isZero();
        assertThat(third.measures().fatigue().fluffs()).isGreaterThan(1);
        assertThat(urgency(Reason.STUMBLING)).isEqualTo(Urgency.DUE);
    }

    @Test
    void stumblingBeginsAnewWithTheDay() {
        readLines(10, 0);
        readLines(10, 0);
        pass(Duration.ofHours(5));
        SessionState next = readLines(10, 3);
        assertThat(next.measures().fatigue().baselineFluffs()).isGreaterThan(1);
        assertThat(urgency(Reason.STUMBLING)).isEqualTo(Urgency.NONE);
    }

    /** One session of many takes and many sessions of one take come to the same. */
    @Test
    void itDoesNotMatterIntoHowManySessionsADayIsCut() {
        SessionState whole = begin();
        StreamTime at = StreamTime.ZERO;
        for (int take = 1; take <= 4; take++) {
            if (take > 1) {
                whole = Session.apply(whole, rolled(at, take));
            }
            whole = at(whole, at.toDuration().plusMinutes(7));
            at = whole.now();
            time = time.plus(Duration.ofMinutes(7));
            whole = Session.apply(whole, new SessionEvent.TakeEnded(at, take, time, TakeEnd.CUT));
            pass(Duration.ofMinutes(take));
        }
        time = MORNING;
        day = Optional.empty();
        SessionState last = whole;
        for (int take = 1; take <= 4; take++) {
            last = read(Duration.ofMinutes(7));
            pass(Duration.ofMinutes(take));
        }
        assertThat(last.day().orElseThrow().until())
                .isEqualTo(whole.day().orElseThrow().until());
        assertThat(last.measures().fatigue()).isEqualTo(whole.measures().fatigue());
    }

    /** A course counts its sessions' own time: a day that each session carries on would be counted again and again. */
    @Test
    void aSessionsOwnTimeIsWithoutWhatWasReadBefore() {
        for (int lesson = 1; lesson <= 3; lesson++) {
            SessionState state = read(Duration.ofMinutes(6));
            assertThat(state.spent()).isEqualTo(new TimeSpent(Duration.ofMinutes(6), Duration.ofMinutes(6)));
            pass(Duration.ofMinutes(2));
        }
        Measured measured = Measured.of(sessions.stream()
                .map(s -> new RecordedSession(Path.of("session"), s))
                .toList());
        assertThat(measured.reading()).isLessThanOrEqualTo(Duration.ofMinutes(18));
    }

    private SessionState begin() {
        return begin(LIMITS);
    }

    private SessionState begin(FatigueLimits limits) {
        List<SessionEvent> events = new ArrayList<>();
        events.add(new SessionEvent.Opened(StreamTime.ZERO, time, "Lesson", "lesson.md", ""));
        day.ifPresent(so -> events.add(new SessionEvent.DayCarried(StreamTime.ZERO, so)));
        events.add(rolled(StreamTime.ZERO, 1));
        return Session.apply(Session.begin(SCRIPT, limits), events);
    }

    private SessionEvent rolled(StreamTime at, int take) {
        return new SessionEvent.TakeStarted(at, take, time, "microphone", ReadingPosition.START);
    }

    /** Read on up to this length of the session's audio; the first word is read at once. */
    private static SessionState at(SessionState state, Duration length) {
        SessionState reading = state.takes().begun()
                ? state
                : Session.apply(
                        state, new SessionEvent.PositionMoved(state.now(), new ReadingPosition(1, 2), Mover.VOICE, 1));
        return Session.apply(
                reading,
                new SessionEvent.SoundMeasured(StreamTime.ofSeconds((double) length.toSeconds()), -20, -10, 0));
    }

    /** A session of one take in which all is read. */
    private SessionState read(Duration length) {
        SessionState state = at(begin(), length);
        time = time.plus(length);
        return end(state);
    }

    private SessionState end(SessionState state) {
        SessionState ended = Session.apply(state, new SessionEvent.TakeEnded(state.now(), 1, time, TakeEnd.CUT));
        sessions.add(ended);
        day = ended.day();
        return ended;
    }

    /** A session in which a line of twenty words is read every six seconds, some a minute broken off first. */
    private SessionState readLines(int minutes, int brokenOff) {
        SessionState state = begin();
        int ordinal = 0;
        for (int i = 0; i < minutes * 10; i++) {
            double start = 6 * i;
            if (i % 10 < brokenOff) {
                state = settle(state, ++ordinal, i, start, start + 0.5, false);
            }
            state = settle(state, ++ordinal, i, start + 1, start + 5.9, true);
        }
        state = at(state, Duration.ofMinutes(minutes).minusSeconds(1));
        time = time.plus(Duration.ofMinutes(minutes));
        return end(state);
    }

    private static SessionState settle(
            SessionState state, int ordinal, int line, double from, double to, boolean whole) {
        Attempt attempt = new Attempt(
                1,
                ordinal,
                line % 100 + 1,
                StreamTime.ofSeconds(from),
                StreamTime.ofSeconds(to),
                whole,
                List.of(),
                List.of());
        return Session.apply(state, new SessionEvent.AttemptSettled(attempt.end(), attempt));
    }

    private void pass(Duration rest) {
        time = time.plus(rest);
    }

    private Urgency urgency(Reason reason) {
        return advice(sessions.get(sessions.size() - 1), reason).urgency();
    }

    private static BreakAdvice advice(SessionState state, Reason reason) {
        return state.measures().fatigue().advice().stream()
                .filter(a -> a.reason() == reason)
                .findFirst()
                .orElseThrow();
    }
}
