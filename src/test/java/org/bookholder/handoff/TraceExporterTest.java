package org.bookholder.handoff;

final class TraceExporterTest extends ExporterContract {
    @Override
    Exporter exporter() {
        return new TraceExporter();
    }
}
