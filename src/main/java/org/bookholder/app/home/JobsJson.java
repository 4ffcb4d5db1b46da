package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobStatus;

/** The jobs of home as JSON for its page, the newest first. */
final class JobsJson {
    private JobsJson() {}

    static JsonNode of(List<JobStatus> jobs) {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (int i = jobs.size() - 1; i >= 0; i--) {
            job(all.addObject(), jobs.get(i));
        }
        return all;
    }

    private static void job(ObjectNode node, JobStatus status) {
        node.put("id", status.id())
                .put("kind", status.job().kind())
                .put("title", status.job().title())
                .put("on", status.job().on())
                .put("step", status.step().name())
                .put("held", status.held())
                .put("problem", status.problem())
                .put("ifStopped", status.job().ifStopped());
        ArrayNode said = node.putArray("said");
        status.said().forEach(said::add);
        status.progress().ifPresent(progress -> progress(node.putObject("progress"), progress));
        status.result().ifPresent(result -> result(node.putObject("result"), result));
    }

    /** Rounded, so that pages are told of what can be seen. */
    private static void progress(ObjectNode node, Progress progress) {
        node.put("what", progress.what()).put("done", Math.round(progress.done() * 200) / 200.0);
        progress.secondsLeft().ifPresent(seconds -> node.put("left", Math.round(seconds)));
    }

    private static void result(ObjectNode node, JobResult result) {
        node.put("said", result.said());
        ArrayNode rows = node.putArray("rows");
        result.rows()
                .forEach(row -> rows.addObject()
                        .put("mark", row.mark())
                        .put("where", row.where())
                        .put("what", row.what())
                        .put("more", row.more()));
        ArrayNode links = node.putArray("links");
        result.links()
                .forEach(link -> links.addObject()
                        .put("title", link.title())
                        .put("address", link.address())
                        .put("kind", link.kind().name()));
    }
}
