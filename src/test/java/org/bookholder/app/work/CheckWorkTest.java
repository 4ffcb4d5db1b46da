package org.bookholder.app.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Checking exports as a job of the page. */
final class CheckWorkTest {
    @TempDir
    private Path folder;

    @Test
    void captionsNeedTheWords() {
        ObjectNode form = form(folder.resolve("film.mp4")).put("noWords", true);
        assertThatThrownBy(() -> job(form))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("captions need the words");
    }

    @Test
    void aFilmWithoutAScriptSaysThatItHasNoCaptions() throws Exception {
        Path film = Ffmpeg.make(folder.resolve("film.mp4"), "-f", "lavfi", "-i", "testsrc2=s=320x180:r=25:d=1");
        JobResult result = job(form(film)).work().run(new Silent());
        assertThat(result.rows())
                .extracting(row -> row.toString())
                .anyMatch(row -> row.contains("no line of a script was heard in it, so it has no captions"));
        assertThat(folder.resolve("captions")).doesNotExist();
    }

    private static ObjectNode form(Path film) {
        ObjectNode form = JsonNodeFactory.instance.objectNode().put("captions", true);
        form.putArray("files").add(film.toString());
        return form;
    }

    private Job job(ObjectNode form) throws ProblemException {
        return new WorkList(StoredExamples.here(folder), any -> Optional.empty(), any -> {})
                .job("check", new WorkRequest(form, Path::of))
                .orElseThrow();
    }

    private static final class Silent implements JobControl {
        @Override
        public Interruption stop() {
            return Interruption.NONE;
        }

        @Override
        public void hold() {}

        @Override
        public void reached(Progress progress) {}

        @Override
        public void say(String line) {}
    }
}
