package org.bookholder.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.app.session.Overflows;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Folders;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

final class ReviewSessionTest {
    @TempDir
    private Path folder;

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "a folder with open files cannot be deleted on Windows")
    void decisionsAfterTheFolderWasDeletedAreKeptElsewhere() throws ProblemException, IOException {
        List<String> warned = new ArrayList<>();
        Environment here = StoredExamples.here(folder.resolve("data")).warning(new Warnings(warned::add));
        Path session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        List<SessionEvent> before = events(session);
        try (ReviewSession review = ReviewSession.of(here, session)) {
            Folders.delete(session);
            review.place().session().ask(mark(), ignored());
        }
        assertThat(warned).singleElement().asString().contains(" kept in ", "the session cannot be written");
        Overflows.takeIn(here, session);
        List<SessionEvent> after = events(session);
        assertThat(after.subList(0, before.size())).isEqualTo(before);
        assertThat(after.subList(before.size(), after.size()))
                .singleElement()
                .isInstanceOf(SessionEvent.Remarked.class);
    }

    private static Request mark() {
        return state -> List.of(new NoteCommand.Add(new Remark.Carried(List.of())));
    }

    private static Request.Reply ignored() {
        return new Request.Reply() {
            @Override
            public void done() {}

            @Override
            public void refused(String why) {}

            @Override
            public void failed(String what) {}
        };
    }

    private static List<SessionEvent> events(Path session) throws ProblemException {
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            return open.events();
        }
    }
}
