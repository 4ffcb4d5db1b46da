package org.bookholder.journal.event;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.SessionEvents;

final class EventCodecProperties {
    @Property
    void decodesWhatItEncoded(@ForAll("events") SessionEvent event) throws ProblemException {
        String text = EventCodec.encode(event);
        assertThat(EventCodec.decode(text, "test")).isEqualTo(event);
        assertThat(text).doesNotContain("\n");
    }

    @Provide
    Arbitrary<SessionEvent> events() {
        return SessionEvents.any();
    }
}
