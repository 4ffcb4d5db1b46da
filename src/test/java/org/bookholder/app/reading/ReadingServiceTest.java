package org.bookholder.app.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ReadingServiceTest {
    @TempDir
    private Path folder;

    private Path script = Path.of("");
    private Path session = Path.of("");

    @BeforeEach
    void writeScript() throws IOException {
        script = folder.resolve("lesson.md");
        session = folder.resolve("session");
        Files.writeString(script, "Every wheel begins with its hub.\n");
    }

    @Test
    void unlocksTheSessionIfWhatFollowsItsOpeningFails() throws ProblemException {
        Environment here = StoredExamples.here(folder);
        ReadingService service = new ReadingService(here, request(), throwingWhenOpened(), control());
        assertThatThrownBy(service::read)
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no terminal");
        try (SessionFolder again = SessionFolder.open(session, here.locks())) {
            assertThat(again.journal().events()).isEmpty();
        }
    }

    private ReadingRequest request() {
        return new ReadingRequest(
                script,
                Optional.empty(),
                Optional.of(session),
                false,
                Optional.empty(),
                Conduct.PLAIN,
                Optional.empty(),
                Optional.empty(),
                true,
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                folder);
    }

    private static ReadingListener throwingWhenOpened() {
        return (ReadingListener) Proxy.newProxyInstance(
                ReadingListener.class.getClassLoader(), new Class<?>[] {ReadingListener.class}, (p, method, given) -> {
                    if (method.getName().equals("opened")) {
                        throw new IllegalStateException("no terminal");
                    }
                    return null;
                });
    }

    private static ReadingControl control() {
        return new ReadingControl() {
            @Override
            public boolean interrupted() {
                return false;
            }

            @Override
            public boolean finishRequested() {
                return false;
            }
        };
    }
}
