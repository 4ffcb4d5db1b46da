package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;
import org.junit.jupiter.api.Test;

/** Lines that the program failed to judge: to be picked up, and not called skipped. */
final class NotJudgedTest {
    private SessionState state = Session.begin(
            Scripts.of("one two three", "four five six", "seven eight", "nine ten"), FatigueLimits.defaults());

    NotJudgedTest() {
        tell(new SessionEvent.TakeStarted(StreamTime.ZERO, 1, Instant.EPOCH, "microphone", ReadingPosition.START));
    }

    @Test
    void theLinesOfTheStretchArePickedUpAsNotJudged() {
        tell(settled(1, 1, true));
        tell(notJudged(2, 3));
        tell(settled(2, 4, true));
        assertThat(outcomes()).containsExactly(Outcome.CLEAN, Outcome.NOT_JUDGED, Outcome.NOT_JUDGED, Outcome.CLEAN);
        assertThat(Pickups.of(state)).extracting(Pickup::line).containsExactly(2, 3);
        assertThat(Pickups.of(state))
                .extracting(Pickup::said)
                .allSatisfy(said -> assertThat(said).contains("listen to it or read it again"));
    }

    @Test
    void theLastLinesOfATakeArePickedUpThoughNothingWasReadAfterThem() {
        tell(notJudged(1, 2));
        assertThat(Pickups.of(state)).extracting(Pickup::line).containsExactly(1, 2);
    }

    @Test
    void aCompleteAttemptElsewhereDecidesTheLine() {
        tell(settled(1, 2, true));
        tell(notJudged(1, 2, 3));
        tell(settled(2, 3, false));
        assertThat(outcomes().subList(0, 3)).containsExactly(Outcome.NOT_JUDGED, Outcome.CLEAN, Outcome.NOT_JUDGED);
        tell(settled(3, 1, true));
        assertThat(outcomes().subList(0, 3)).containsExactly(Outcome.CLEAN, Outcome.CLEAN, Outcome.NOT_JUDGED);
    }

    @Test
    void settlingTheTakeDoesNotUndoIt() {
        tell(notJudged(2));
        tell(new SessionEvent.TakeSettled(at(9), 1, List.of(attempt(1, 1, true), attempt(2, 3, true)), List.of()));
        assertThat(outcomes().subList(0, 3)).containsExactly(Outcome.CLEAN, Outcome.NOT_JUDGED, Outcome.CLEAN);
        assertThat(state.unjudged()).extracting(UnjudgedStretch::lines).containsExactly(List.of(2));
    }

    @Test
    void linesStayNotJudgedIfTheTextBeforeThemChanges() {
        tell(notJudged(2));
        tell(new SessionEvent.TextChanged(
                at(5), "A new line.\n\none two three\n\nfour five six\n\nseven eight\n\nnine ten\n"));
        assertThat(outcomes().subList(1, 4)).containsExactly(Outcome.SKIPPED, Outcome.NOT_JUDGED, Outcome.SKIPPED);
    }

    private List<Outcome> outcomes() {
        return state.lines().all().stream().map(LineNotes::outcome).toList();
    }

    private void tell(SessionEvent event) {
        state = Session.apply(state, event);
    }

    private static SessionEvent notJudged(Integer... lines) {
        return new SessionEvent.NotJudged(at(4), new UnjudgedStretch(1, at(2), at(4), List.of(lines)), "planted");
    }

    private static SessionEvent settled(int ordinal, int line, boolean complete) {
        return new SessionEvent.AttemptSettled(at(5), attempt(ordinal, line, complete));
    }

    private static Attempt attempt(int ordinal, int line, boolean complete) {
        return new Attempt(1, ordinal, line, at(ordinal), at(ordinal + 1), complete, List.of(), List.of());
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
