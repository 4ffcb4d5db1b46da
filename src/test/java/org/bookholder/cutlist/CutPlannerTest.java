package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.swapped;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class CutPlannerTest {
    private static final Script SCRIPT = Scripts.of(
            "Every wheel begins with its hub.",
            "Count the spokes before you go on.",
            "Then lace the first side.",
            "Turn it over and lace the other.");

    private static final CutRules RULES = new CutRules(s(0.1), s(0.1), s(2), false);

    @Test
    void linesReadInOneGoStayOneClip() throws ProblemException {
        CutList cut = plan(take(
                1,
                0,
                20,
                complete(1, 1, 1, 6, 1, 3),
                complete(1, 2, 2, 7, 3.5, 6),
                complete(1, 3, 3, 5, 7, 9),
                complete(1, 4, 4, 7, 9.6, 12)));
        assertThat(described(cut)).containsExactly("1-4 take 1 0.900-12.100");
        assertThat(cut.cuts()).isZero();
    }

    @Test
    void usesTheLastCleanAttempt() throws ProblemException {
        CutList cut = plan(take(
                1,
                0,
                30,
                complete(1, 1, 1, 6, 1, 3),
                complete(1, 2, 2, 7, 3.5, 6),
                broken(1, 3, 3, 2, 7, 8),
                complete(1, 4, 3, 5, 9, 11),
                complete(1, 5, 3, 5, 12, 14, swapped(2, "lace", "lay")),
                complete(1, 6, 4, 7, 15, 17)));
        assertThat(described(cut))
                .containsExactly("1-2 take 1 0.900-6.100", "3 take 1 8.900-11.100", "4 take 1 14.900-17.100");
        assertThat(cut.cuts()).isEqualTo(2);
    }

    @Test
    void aLineWithoutACleanAttemptLeavesAGapThatSaysWhy() throws ProblemException {
        List<SessionEvent> events = take(
                1,
                0,
                30,
                complete(1, 1, 1, 6, 1, 3),
                complete(1, 2, 2, 7, 4, 7, swapped(3, "spokes", "folks")),
                complete(1, 3, 4, 7, 8, 11));
        CutList cut = plan(events);
        assertThat(described(cut))
                .containsExactly("1 take 1 0.900-3.100", "2 gap 3.200", "3 gap 2.776", "4 take 1 7.900-11.100");
        assertThat(cut.items().get(1).markers())
                .containsExactly(CutMarker.of(CutMarker.Kind.PICKUP, StreamTime.ZERO, 2));
        assertThat(cut.items().get(2).markers())
                .containsExactly(CutMarker.of(CutMarker.Kind.PICKUP, StreamTime.ZERO, 3));
        assertThat(described(CutPlanner.plan(state(events), RULES.withMisread(true), TakeSound.NONE)))
                .containsExactly("1-2 take 1 0.900-7.100", "3 gap 2.776", "4 take 1 7.900-11.100");
    }

    /** At 120 words a minute, and with a quarter of a minute for something else in the second line's attempt. */
    @Test
    void anAttemptOfImplausibleLengthDoesNotSetTheLengthOfAGap() throws ProblemException {
        List<SessionEvent> events =
                take(1, 0, 60, complete(1, 1, 1, 6, 1, 4), complete(1, 2, 2, 7, 5, 20, swapped(3, "spokes", "folks")));
        assertThat(plan(events).items().get(1).length().seconds()).isBetween(7.0, 10.0);
        List<SessionEvent> clipped =
                take(1, 0, 60, complete(1, 1, 1, 6, 1, 4), complete(1, 2, 2, 7, 5, 5.4, swapped(3, "spokes", "folks")));
        assertThat(plan(clipped).items().get(1).length().seconds()).isBetween(1.5, 2.5);
    }

    @Test
    void anAsideIsCutOutAndMarked() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>(take(1, 0, 30));
        events.add(new SessionEvent.TakeSettled(
                s(30),
                1,
                List.of(complete(1, 1, 1, 6, 1, 3), complete(1, 2, 2, 7, 4.8, 7)),
                List.of(new Aside(1, s(3.4), s(4.4), "was that the post", 1))));
        CutList cut = plan(events);
        assertThat(described(cut).subList(0, 2)).containsExactly("1 take 1 0.900-3.100", "2 take 1 4.700-7.100");
        assertThat(cut.items().get(0).markers())
                .containsExactly(new CutMarker(
                        CutMarker.Kind.ASIDE,
                        s(2.2),
                        1,
                        Optional.of(new Aside(1, s(3.4), s(4.4), "was that the post", 1))));
    }

    @Test
    void twoTakesAreNeverOneClip() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>(take(1, 0, 4, complete(1, 1, 1, 6, 1, 3.9)));
        events.addAll(take(2, 4, 8, complete(2, 1, 2, 7, 4.3, 7)));
        assertThat(described(plan(events)).subList(0, 2))
                .containsExactly("1 take 1 0.900-3.950", "2 take 2 4.200-7.100");
    }

    @Test
    void aLongPauseIsCutButAShortOneIsNot() throws ProblemException {
        assertThat(described(plan(take(1, 0, 20, complete(1, 1, 1, 6, 1, 3), complete(1, 2, 2, 7, 5.1, 7))))
                        .subList(0, 2))
                .containsExactly("1 take 1 0.900-3.100", "2 take 1 5.000-7.100");
        assertThat(described(plan(take(1, 0, 20, complete(1, 1, 1, 6, 1, 3), complete(1, 2, 2, 7, 5, 7))))
                        .get(0))
                .isEqualTo("1-2 take 1 0.900-7.100");
    }

    @Test
    void aHoldIsCutOut() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>();
        events.add(rolled(1, 0));
        events.add(new SessionEvent.Held(s(3.2)));
        events.add(new SessionEvent.Resumed(s(4)));
        events.add(cut(1, 20));
        events.add(settled(1, 20, complete(1, 1, 1, 6, 1, 3), complete(1, 2, 2, 7, 4.5, 7)));
        assertThat(described(plan(events)).subList(0, 2))
                .containsExactly("1 take 1 0.900-3.100", "2 take 1 4.400-7.100");
    }

    /** Two lines with hardly any quiet between them share it. */
    @Test
    void aClipNeverIncludesNeighbouringSpeech() throws ProblemException {
        CutList cut = plan(take(
                1,
                0,
                20,
                complete(1, 1, 1, 6, 1, 3),
                broken(1, 2, 2, 3, 3.08, 4),
                complete(1, 3, 2, 7, 4, 7),
                complete(1, 4, 3, 5, 7.5, 9)));
        assertThat(described(cut).subList(0, 2)).containsExactly("1 take 1 0.900-3.040", "2-3 take 1 4.000-9.100");
        assertThat(cut.clips().get(0).quietTo()).isEqualTo(s(3.08));
    }

    @Test
    void aMarkedLineIsUsedAndMarked() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>(take(1, 0, 20, complete(1, 1, 1, 6, 1, 3)));
        events.add(new SessionEvent.PickupMarked(s(19), 1, "a door slammed"));
        Clip clip = plan(events).clips().get(0);
        assertThat(clip.markers()).containsExactly(CutMarker.of(CutMarker.Kind.PICKUP, s(0.1), 1));
    }

    @Test
    void decisionsAndNotesAreMarkedAtTheirLine() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>(take(
                1,
                0,
                20,
                complete(1, 1, 1, 6, 1, 3),
                complete(1, 2, 2, 7, 3.5, 6, swapped(3, "spokes", "folks")),
                complete(1, 3, 3, 5, 7, 9),
                complete(1, 4, 4, 7, 9.6, 12)));
        events.add(remark(new Remark.Decided(2, Decision.Choice.FIX_IN_EDIT, 1, 2)));
        events.add(remark(new Remark.Noted(3, "show the picture here", false)));
        events.add(remark(new Remark.Noted(4, "", false)));
        CutList cut = plan(events);
        assertThat(described(cut)).containsExactly("1-4 take 1 0.900-12.100");
        assertThat(cut.items().get(0).markers())
                .containsExactly(
                        CutMarker.of(CutMarker.Kind.FIX, s(2.6), 2), CutMarker.of(CutMarker.Kind.NOTE, s(6.1), 3));
    }

    @Test
    void aMarkThatALaterReadingSettledIsNoNoteOnItsClip() throws ProblemException {
        List<SessionEvent> events = new ArrayList<>();
        events.add(rolled(1, 0));
        events.add(new SessionEvent.PickupMarked(s(4), 1, "a door slammed"));
        events.add(cut(1, 20));
        events.add(settled(1, 20, complete(1, 1, 1, 6, 1, 3), complete(1, 2, 1, 6, 5, 7)));
        assertThat(plan(events).clips().get(0).markers()).isEmpty();
        events.add(remark(new Remark.Noted(1, "show the picture here", false)));
        assertThat(plan(events).clips().get(0).markers())
                .as("a note that marks nothing stays")
                .containsExactly(CutMarker.of(CutMarker.Kind.NOTE, s(0.1), 1));
    }

    @Test
    void anAsideAtALineThatIsMissingIsMarkedInItsGap() throws ProblemException {
        Aside aside = new Aside(1, s(3.4), s(4.4), "was that the post", 2);
        List<SessionEvent> events = new ArrayList<>(take(1, 0, 30));
        events.add(new SessionEvent.TakeSettled(s(30), 1, List.of(complete(1, 1, 1, 6, 1, 3)), List.of(aside)));
        CutList cut = plan(events);
        assertThat(cut.items().get(0).markers()).isEmpty();
        assertThat(cut.items().get(1).markers())
                .containsExactly(
                        CutMarker.of(CutMarker.Kind.PICKUP, StreamTime.ZERO, 2),
                        new CutMarker(CutMarker.Kind.ASIDE, StreamTime.ZERO, 2, Optional.of(aside)));
        assertThat(cut.items().get(2).markers()).hasSize(1);
    }

    /** The recogniser gave the first word's beginning to the line that was broken off before it. */
    @Test
    void aLineAfterABrokenOffOneBeginsWhereItIsHeard() throws ProblemException {
        TakeSound sound = Sounds.of(10, t -> (t >= 4 && t < 4.6) || (t >= 4.8 && t < 7) ? 6000 : 12);
        List<SessionEvent> events =
                take(1, 0, 10, broken(1, 1, 1, 3, 4, 4.95), complete(1, 2, 1, 6, 5, 7), complete(1, 3, 2, 7, 8, 9.5));
        assertThat(CutPlanner.plan(state(events), RULES, sound).clips().get(0).in())
                .isEqualTo(s(4.7));
    }

    @Test
    void aSessionInWhichNothingWasReadIsAllGaps() throws ProblemException {
        CutList cut = plan(List.of());
        assertThat(cut.items()).hasSize(4);
        assertThat(cut.clips()).isEmpty();
        assertThat(cut.items().get(0).markers())
                .containsExactly(CutMarker.of(CutMarker.Kind.PICKUP, StreamTime.ZERO, 1));
    }

    private static CutList plan(List<SessionEvent> events) throws ProblemException {
        return CutPlanner.plan(state(events), RULES, TakeSound.NONE);
    }

    private static SessionState state(List<SessionEvent> events) {
        return Session.apply(Session.begin(SCRIPT, FatigueLimits.defaults()), events);
    }

    private static List<SessionEvent> take(int take, double from, double to, Attempt... attempts) {
        return List.of(rolled(take, from), cut(take, to), settled(take, to, attempts));
    }

    private static SessionEvent remark(Remark remark) {
        return new SessionEvent.Remarked(s(20), remark);
    }

    private static SessionEvent settled(int take, double at, Attempt... attempts) {
        return new SessionEvent.TakeSettled(s(at), take, List.of(attempts), List.of());
    }

    private static List<String> described(CutList cut) {
        return cut.items().stream()
                .map(item -> item.clip()
                        .map(c -> String.format(
                                java.util.Locale.ROOT,
                                "%s take %d %.3f-%.3f",
                                c.lines(),
                                c.take(),
                                c.in().seconds(),
                                c.out().seconds()))
                        .orElse(String.format(
                                java.util.Locale.ROOT,
                                "%s gap %.3f",
                                item.lines(),
                                item.length().seconds())))
                .toList();
    }
}
