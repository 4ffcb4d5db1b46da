package org.bookholder.handoff;

import java.time.ZoneOffset;

final class PickupListExporterTest extends ExporterContract {
    @Override
    Exporter exporter() {
        return new PickupListExporter(ZoneOffset.ofHours(2));
    }
}
