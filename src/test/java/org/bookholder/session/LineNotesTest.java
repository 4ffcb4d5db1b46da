package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import java.util.Optional;
import org.bookholder.session.Decision.Choice;
import org.junit.jupiter.api.Test;

final class LineNotesTest {
    private static final Optional<Decision> FIX = Optional.of(new Decision(Choice.FIX_IN_EDIT, 1, 1, s(9)));

    @Test
    void aDecisionOutlastsEveryOtherChange() {
        LineNotes decided = LineNotes.unread(1).ruled(List.of(complete(1, 1, 1, 5, 1, 3)), FIX);
        assertThat(decided.reached(true).decision()).isEqualTo(FIX);
        assertThat(decided.marked(s(10), "a cough").decision()).isEqualTo(FIX);
        assertThat(decided.movedTo(4).decision()).isEqualTo(FIX);
        assertThat(decided.with(complete(2, 1, 1, 5, 11, 13)).decision()).isEqualTo(FIX);
        assertThat(decided.without(1, 1).decision()).isEqualTo(FIX);
        assertThat(decided.movedTo(4).decidedTo(Choice.FIX_IN_EDIT)).isTrue();
    }
}
