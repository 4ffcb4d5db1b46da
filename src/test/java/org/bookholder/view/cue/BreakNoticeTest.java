package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.view.SampleState;
import org.junit.jupiter.api.Test;

final class BreakNoticeTest {
    @Test
    void showsHowSoonTheBreakIsDue() {
        assertThat(BreakNotice.NONE.next(report(Urgency.COMING), 3, false).text())
                .isEqualTo("break in 7 min");
        assertThat(BreakNotice.NONE.next(report(Urgency.DUE), 3, false).text()).isEqualTo("break due");
        assertThat(BreakNotice.NONE.next(report(Urgency.OVERDUE), 3, false).text())
                .isEqualTo("break overdue by 11 min");
    }

    @Test
    void doesNotChangeInMidLine() {
        BreakNotice before = BreakNotice.NONE.next(report(Urgency.NONE), 3, true);
        BreakNotice inTheLine = before.next(report(Urgency.DUE), 3, true);
        assertThat(inTheLine.urgency()).isEqualTo(Urgency.NONE);
        assertThat(inTheLine.next(report(Urgency.DUE), 4, true).urgency()).isEqualTo(Urgency.DUE);
    }

    @Test
    void changesAtOnceWhileNobodyReads() {
        BreakNotice before = BreakNotice.NONE.next(report(Urgency.NONE), 3, true);
        assertThat(before.next(report(Urgency.COMING), 3, false).urgency()).isEqualTo(Urgency.COMING);
    }

    @Test
    void disappearsWithoutAdvice() {
        BreakNotice due = BreakNotice.NONE.next(report(Urgency.DUE), 3, false);
        assertThat(due.next(report(Urgency.NONE), 4, true).text()).isEmpty();
    }

    private static FatigueReport report(Urgency urgency) {
        return SampleState.lesson().urgency(urgency).state().measures().fatigue();
    }
}
