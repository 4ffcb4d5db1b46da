package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class PickupListExporterTest extends ExporterContract {
    @Override
    Exporter exporter() {
        return new PickupListExporter(ZoneOffset.ofHours(2));
    }

    @Test
    void saysWhatIsNotCalledBecauseItIsKnown() throws IOException {
        List<SessionEvent> events = new ArrayList<>(ExampleSession.events());
        events.add(new SessionEvent.Remarked(
                StreamTime.ofSeconds(18), new Remark.Carried(List.of(AcceptedReading.heardAs("spokes", "folks")))));
        SessionState state =
                Session.apply(Session.begin(ExampleSession.state().script(), FatigueLimits.defaults()), events);
        StringBuilder list = new StringBuilder();
        exporter().write(state, events, list);
        assertThat(list.toString())
                .contains("Not called    line 2: \u201cspokes\u201d, known to be heard as \u201cfolks\u201d");
    }
}
