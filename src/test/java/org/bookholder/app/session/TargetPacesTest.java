package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whose pace is followed: the script's, else the course's, else the presenter's, else common practice. */
final class TargetPacesTest {
    @TempDir
    private Path folder;

    private TargetPaces ada;
    private TargetPaces ben;

    @BeforeEach
    void presenters() {
        Environment here = StoredExamples.here(folder.resolve("data"));
        ada = new TargetPaces(here, "Ada");
        ben = new TargetPaces(here, "Ben");
    }

    @Test
    void theScriptsPaceComesFirst() throws IOException, ProblemException {
        course("pace: 110\n");
        ada.keep("127");
        assertThat(aimed(ada, "---\npace: 90\n---\nHello.\n")).isEqualTo(pace(90, PaceSource.SCRIPT));
    }

    @Test
    void thenTheCourses() throws IOException, ProblemException {
        course("pace: 110\n");
        ada.keep("127");
        assertThat(aimed(ada, "Hello.\n")).isEqualTo(pace(110, PaceSource.COURSE));
    }

    @Test
    void thenThePresentersOwn() throws IOException, ProblemException {
        course("title: Wheels\n");
        ada.keep("127");
        assertThat(aimed(ada, "Hello.\n")).isEqualTo(pace(127, PaceSource.OWN));
        assertThat(aimed(ben, "Hello.\n")).as("another presenter").isEqualTo(pace(100, PaceSource.USUAL));
    }

    @Test
    void onePresentersCanBeChangedAndDropped() throws IOException, ProblemException {
        ada.keep("127");
        ada.keep("131");
        assertThat(ada.own()).hasValue(131);
        ada.keep("");
        assertThat(ada.own()).isEmpty();
        assertThat(aimed(ada, "Hello.\n")).isEqualTo(pace(100, PaceSource.USUAL));
    }

    @Test
    void whatIsNoPaceIsRefusedAndChangesNothing() throws ProblemException {
        ada.keep("127");
        assertThatThrownBy(() -> ada.keep("fast")).isInstanceOf(ProblemException.class);
        assertThatThrownBy(() -> ada.keep("900")).hasMessageContaining("40 to 300");
        assertThat(ada.own()).hasValue(127);
    }

    private void course(String text) throws IOException {
        Files.writeString(folder.resolve("course.yaml"), text);
    }

    private ScriptSettings aimed(TargetPaces paces, String text) throws IOException, ProblemException {
        Path file = folder.resolve("lesson.md");
        Files.writeString(file, text);
        return paces.aimed(ScriptReader.read(file), file).settings();
    }

    private static ScriptSettings pace(int words, PaceSource source) {
        return ScriptSettings.defaults().paced(words, source);
    }
}
