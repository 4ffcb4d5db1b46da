package org.bookholder.journal.event;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.journal.event.CheckedText.State;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class CheckedTextTest {
    private static final SessionEvent EVENT =
            new SessionEvent.PickupMarked(StreamTime.ofSeconds(3), 7, "a \"note\" with \u00e9, { and \\");

    private static final String TEXT = EventCodec.encode(EVENT);
    private static final String CHECKED = CheckedText.of(TEXT);

    @Test
    void aTextThatWasJustWrittenIsIntact() {
        assertThat(CheckedText.state(CHECKED)).isEqualTo(State.INTACT);
    }

    /** The sum was worked out bit by bit by RFC 3720, section 12.1, and checked there against its appendix B.4. */
    @Test
    void theSumIsWrittenAsOneMoreProperty() {
        assertThat(CheckedText.of("{\"type\":\"held\",\"at\":5}"))
                .isEqualTo("{\"type\":\"held\",\"at\":5,\"crc32c\":\"857c3ddc\"}");
    }

    @Test
    void aTextOfAnEarlierVersionIsUnchecked() {
        assertThat(CheckedText.state(TEXT)).isEqualTo(State.UNCHECKED);
    }

    @Test
    void anyOtherLetterInItShows() {
        for (int i = 0; i < CHECKED.length() - 12; i++) {
            boolean named = i >= TEXT.length() - 1;
            char other = CHECKED.charAt(i) == 'x' ? 'y' : 'x';
            String changed = CHECKED.substring(0, i) + other + CHECKED.substring(i + 1);
            assertThat(CheckedText.state(changed))
                    .as("letter %d", i)
                    .isEqualTo(named ? State.UNCHECKED : State.CHANGED);
        }
    }

    @Test
    void anotherSumShows() {
        for (int i = CHECKED.length() - 10; i < CHECKED.length() - 2; i++) {
            char other = CHECKED.charAt(i) == '0' ? '1' : '0';
            String changed = CHECKED.substring(0, i) + other + CHECKED.substring(i + 1);
            assertThat(CheckedText.state(changed)).as("letter %d", i).isEqualTo(State.CHANGED);
        }
    }

    @Test
    void theEventIsReadAsWithoutTheSum() throws ProblemException {
        assertThat(EventCodec.decode(CHECKED, "test")).isEqualTo(EVENT);
    }
}
