package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.session.AcceptedReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ReadRightNotesTest {
    @Test
    void keepWhoseTheSessionIsAndWhatWasDecided(@TempDir Path session) throws Exception {
        ReadRightNotes notes = new ReadRightNotes("Ann", List.of(AcceptedReading.heardAs("Frames", "flames")));
        notes.keep(session);
        assertThat(ReadRightNotes.of(session)).contains(notes);
    }

    @Test
    void ofALaterVersionAreReadAsFarAsTheyAreKnown(@TempDir Path session) throws Exception {
        Files.writeString(
                session.resolve("read-right.json"), "{\"presenter\": \"Ann\", \"readRight\": [], \"since\": 2030}");
        assertThat(ReadRightNotes.of(session)).contains(new ReadRightNotes("Ann", List.of()));
    }

    @Test
    void unreadableNotesAreIgnored(@TempDir Path session) throws Exception {
        assertThat(ReadRightNotes.of(session)).isEmpty();
        for (String damaged : List.of(
                "[",
                "null",
                "{\"presenter\": null, \"readRight\": []}",
                "",
                "{\"course\": \"hives\", \"readRight\": []}",
                "{\"presenter\": \"Ann\", \"readRight\": [null]}")) {
            Files.writeString(session.resolve("read-right.json"), damaged);
            assertThat(ReadRightNotes.of(session)).as(damaged).isEmpty();
        }
    }
}
