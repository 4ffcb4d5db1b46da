package org.bookholder.app.work;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Matching camera files as a job of the page. */
final class MatchWorkTest {
    @TempDir
    private Path folder;

    @Test
    void eachFilesMatchIsReportedOnce() throws Exception {
        Path session = folder.resolve("session");
        StoredExamples.write(session, folder.resolve("lesson.md").toString());
        ObjectNode form = JsonNodeFactory.instance.objectNode().put("session", session.toString());
        for (String name : List.of("a.mp4", "b.mp4", "c.mp4")) {
            form.withArray("files")
                    .add(Files.writeString(folder.resolve(name), "no film").toString());
        }
        Job job = new WorkList(StoredExamples.here(folder), any -> Optional.empty(), any -> {})
                .job("match", new WorkRequest(form, Path::of))
                .orElseThrow();
        Listening control = new Listening();
        JobResult result = job.work().run(control);
        assertThat(control.said)
                .satisfiesExactly(
                        a -> assertThat(a).startsWith("a.mp4: "),
                        b -> assertThat(b).startsWith("b.mp4: "),
                        c -> assertThat(c).startsWith("c.mp4: "));
        assertThat(result.said()).isEqualTo("0 of 3 files matched");
        assertThat(result.rows()).extracting(JobResult.Row::mark).containsExactly("failed", "failed", "failed");
    }

    /** Remembers what it is told. */
    private static final class Listening implements JobControl {
        private final List<String> said = new ArrayList<>();

        @Override
        public Interruption stop() {
            return Interruption.NONE;
        }

        @Override
        public void hold() {}

        @Override
        public void reached(Progress progress) {}

        @Override
        public void say(String line) {
            said.add(line);
        }
    }
}
