package org.bookholder.fatigue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.time.Duration;
import org.bookholder.fatigue.BreakAdvice.Reason;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueClocks.Doing;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.follow.model.Attempt;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FatigueTest {
    private static final FatigueLimits LIMITS = FatigueLimits.defaults();
    private static final ScriptLine LINE = Scripts.sized(100, 1, 20).lines().get(0);

    private static FatigueLog begin() {
        return FatigueLog.begin(LIMITS);
    }

    private static FatigueLog read(FatigueLog log, long minutes) {
        return log.advance(Duration.ofMinutes(minutes), Doing.READING);
    }

    private static FatigueLog rest(FatigueLog log, Duration length) {
        return log.advance(length, Doing.RESTING);
    }

    private static BreakAdvice advice(FatigueLog log, Reason reason, double seconds) {
        return log.report(s(seconds)).advice().stream()
                .filter(a -> a.reason() == reason)
                .findFirst()
                .orElseThrow();
    }

    private static FatigueLog plus(FatigueLog log, Attempt attempt) {
        return log.plus(attempt, PaceOfLine.of(LINE, attempt, StreamTime.ofSeconds(0.25)));
    }

    /** From {@code from} to {@code to} minutes a line of 20 words each 12 s, every {@code nth} one broken off first. */
    private static FatigueLog lines(FatigueLog log, int from, int to, int nth, double secondsEach) {
        FatigueLog next = log;
        for (int i = from * 5; i < to * 5; i++) {
            double start = i * 12;
            if (i % nth == 0) {
                next = plus(next, broken(1, 2 * i + 1, 1, 2, start, start + 1));
            }
            next = plus(next, complete(1, 2 * i + 2, 1, 20, start + 1, start + 1 + secondsEach));
        }
        return next;
    }

    @ParameterizedTest
    @CsvSource({
        // about 35 min of continuous reading: Titze, Svec and Popolo 2003, JSLHR 46:919-932
        "VOICE, 24, NONE",
        "VOICE, 25, COMING",
        "VOICE, 34, COMING",
        "VOICE, 35, DUE",
        "VOICE, 45, OVERDUE",
        // 5 to 10 min after 50 to 60 min at a screen: HSE L26
        "SCREEN, 49, NONE",
        "SCREEN, 50, COMING",
        "SCREEN, 60, DUE",
        // common practice: reading from a script tires after 2 to 3 hours, being on camera after 3 to 4
        "READING, 104, NONE",
        "READING, 120, DUE",
        "READING, 180, OVERDUE",
        "ON_CAMERA, 164, NONE",
        "ON_CAMERA, 180, DUE",
        "ON_CAMERA, 240, OVERDUE"
    })
    void warnsBeforeAtAndAfterALimit(Reason reason, long minutes, Urgency urgency) {
        assertThat(advice(read(begin(), minutes), reason, 0).urgency()).isEqualTo(urgency);
    }

    @Test
    void givesTheClocksAndTheirLimits() {
        FatigueLog rested = rest(read(begin(), 10), Duration.ofMinutes(6));
        FatigueLimits limits = FatigueLimits.defaults();
        assertThat(advice(read(rested, 34), Reason.VOICE, 0).figures())
                .isEqualTo(new AdviceFigures.Clock(Duration.ofMinutes(34), limits.voice(), true));
        assertThat(advice(read(begin(), 41), Reason.SCREEN, 0).figures())
                .isEqualTo(new AdviceFigures.Clock(Duration.ofMinutes(41), limits.screen(), false));
        assertThat(advice(read(rested, 110), Reason.READING, 0).figures())
                .isEqualTo(new AdviceFigures.Clock(Duration.ofHours(2), limits.reading(), true));
        assertThat(advice(read(begin(), 5), Reason.ON_CAMERA, 0).figures())
                .isEqualTo(new AdviceFigures.Clock(Duration.ofMinutes(5), limits.onCamera(), false));
        assertThat(advice(read(begin(), 5), Reason.STUMBLING, 0).figures()).isEqualTo(new AdviceFigures.TooLittle());
    }

    @Test
    void onlyABreakOfFiveMinutesResetsTheBreakClocks() {
        FatigueLog tired = read(begin(), 34);
        FatigueReport shorter = read(rest(tired, Duration.ofSeconds(299)), 1).report(s(0));
        assertThat(shorter.readingSinceBreak()).isEqualTo(Duration.ofMinutes(35));
        assertThat(shorter.sinceBreak()).isEqualTo(Duration.ofMinutes(35).plusSeconds(299));
        FatigueReport real = read(rest(tired, Duration.ofMinutes(5)), 1).report(s(0));
        assertThat(real.readingSinceBreak()).isEqualTo(Duration.ofMinutes(1));
        assertThat(real.sinceBreak()).isEqualTo(Duration.ofMinutes(1));
        assertThat(real.reading()).isEqualTo(Duration.ofMinutes(35));
        assertThat(real.onCamera()).isEqualTo(Duration.ofMinutes(35));
    }

    @Test
    void aBreakIsShownWhileItLasts() {
        FatigueReport resting = rest(read(begin(), 40), Duration.ofMinutes(5)).report(s(0));
        assertThat(resting.readingSinceBreak()).isZero();
        assertThat(resting.warnings()).isEmpty();
        assertThat(resting.toNextBreak()).contains(Duration.ofMinutes(35));
    }

    @Test
    void recoveryResetsAllClocks() {
        // after 2 h of reading 90 % is recovered in 4 to 6 h: Hunter and Titze 2009
        FatigueReport next =
                read(rest(read(begin(), 130), Duration.ofHours(4)), 1).report(s(0));
        assertThat(next.reading()).isEqualTo(Duration.ofMinutes(1));
    }

    @Test
    void standingByIsOnCameraButNotReading() {
        FatigueReport report =
                begin().advance(Duration.ofMinutes(3), Doing.STANDING_BY).report(s(0));
        assertThat(report.reading()).isZero();
        assertThat(report.onCamera()).isEqualTo(Duration.ofMinutes(3));
    }

    @Test
    void theMostUrgentAdviceComesFirst() {
        assertThat(read(begin(), 52).report(s(0)).warnings())
                .extracting(BreakAdvice::reason)
                .containsExactly(Reason.VOICE, Reason.SCREEN);
    }

    @Test
    void moreStumblingThanInTheFirstTwentyMinutesWarnsBeforeTheClocks() {
        FatigueLog log = lines(lines(begin(), 0, 20, 20, 10), 20, 30, 4, 10);
        double now = 30 * 60 - 1;
        assertThat(log.report(s(now)).baselineFluffs()).isCloseTo(0.25, within(0.01));
        assertThat(log.report(s(now)).fluffs()).isCloseTo(1.2, within(0.1));
        BreakAdvice stumbling = advice(log, Reason.STUMBLING, now);
        assertThat(stumbling.urgency()).isEqualTo(Urgency.DUE);
        AdviceFigures.Fluffs figures = (AdviceFigures.Fluffs) stumbling.figures();
        assertThat(figures.recent()).isCloseTo(1.25, within(0.05));
        assertThat(figures.baseline()).isCloseTo(0.25, within(0.01));
    }

    @Test
    void anEvenReaderIsNotCalledTired() {
        FatigueLog log = lines(begin(), 0, 60, 10, 10);
        for (int minute = 1; minute <= 60; minute++) {
            assertThat(advice(log, Reason.STUMBLING, minute * 60 - 1).urgency()).isEqualTo(Urgency.NONE);
        }
    }

    @Test
    void aDriftingPaceIsReportedWithItsFigures() {
        BreakAdvice drift = advice(lines(lines(begin(), 0, 20, 500, 10), 20, 30, 500, 8), Reason.STUMBLING, 1799);
        assertThat(drift.urgency()).isEqualTo(Urgency.DUE);
        AdviceFigures.Pace figures = (AdviceFigures.Pace) drift.figures();
        assertThat(figures.baseline()).isCloseTo(120, within(0.5));
        assertThat(figures.recent()).isCloseTo(150, within(0.5));
    }

    @Test
    void removingAnAttemptRestoresTheStateBefore() {
        Attempt attempt = broken(1, 1, 1, 3, 5, 6);
        PaceOfLine pace = PaceOfLine.of(LINE, attempt, s(0.25));
        assertThat(begin().plus(attempt, pace)).isNotEqualTo(begin());
        assertThat(begin().plus(attempt, pace).minus(attempt, pace))
                .isEqualTo(begin())
                .hasSameHashCodeAs(begin());
    }

    @Test
    void anAttemptTakenBackAfterTwentyMinutesLeavesTheFirstTwentyAlone() {
        FatigueLog log = lines(begin(), 0, 21, 20, 10);
        Attempt attempt = broken(1, 1, 1, 3, 1200, 1201);
        PaceOfLine pace = PaceOfLine.of(LINE, attempt, s(0.25));
        FatigueLog back = log.plus(attempt, pace).minus(attempt, pace);
        assertThat(back.report(s(1260)).baselineFluffs())
                .isEqualTo(log.report(s(1260)).baselineFluffs());
    }

    @Test
    void keepsOneEntryForAMinute() {
        assertThat(lines(begin(), 0, 180, 5, 10).minutes()).isBetween(180, 181);
    }

    @Test
    void stepsOfALimitMayFallTogetherAndARestMayBeEqualToTheRecovery() {
        Limit at = Limit.ofMinutes(0, 30, 30);
        assertThat(at.urgency(Duration.ofMinutes(29))).isEqualTo(Urgency.COMING);
        assertThat(at.urgency(Duration.ofMinutes(30))).isEqualTo(Urgency.OVERDUE);
        assertThat(Limit.ofMinutes(30, 30, 30).urgency(Duration.ofMinutes(29))).isEqualTo(Urgency.NONE);
        Duration rest = Duration.ofMinutes(5);
        assertThat(new FatigueLimits(at, at, at, at, rest, rest).recovery()).isEqualTo(rest);
    }

    @Test
    void limitsThatDoNotRiseAreRefused() {
        assertThatThrownBy(() -> Limit.ofMinutes(30, 20, 40))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must rise");
    }
}
