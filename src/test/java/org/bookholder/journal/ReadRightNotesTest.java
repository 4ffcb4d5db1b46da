package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.follow.model.Deviation.Kind;
import org.bookholder.session.AcceptedReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ReadRightNotesTest {
    private static final AcceptedReading SWAP = new AcceptedReading(0, "frames", "flames", Kind.SWAPPED);
    private static final AcceptedReading OWN_LINE = new AcceptedReading(3, "a", "", Kind.DROPPED);

    @Test
    void readingsAcceptedInACourseAreCarriedToItsNextSession(@TempDir Path sessions) throws Exception {
        Path first = Files.createDirectory(sessions.resolve("first"));
        Path other = Files.createDirectory(sessions.resolve("other"));
        Files.createDirectory(sessions.resolve("none"));
        String course = ReadRightNotes.courseOf(Path.of("hives", "lesson-1.md"));
        ReadRightNotes notes = new ReadRightNotes(course, List.of(SWAP, OWN_LINE));
        notes.keep(first);
        new ReadRightNotes("elsewhere", List.of(new AcceptedReading(0, "go", "no", Kind.SWAPPED))).keep(other);
        assertThat(ReadRightNotes.of(first)).contains(notes);
        assertThat(ReadRightNotes.ofCourse(sessions, course)).containsExactly(SWAP);
        assertThat(ReadRightNotes.courseOf(Path.of("hives", "lesson-2.md"))).isEqualTo(course);
    }

    @Test
    void unreadableNotesAreIgnored(@TempDir Path sessions) throws Exception {
        Path broken = Files.createDirectory(sessions.resolve("broken"));
        for (String damaged : List.of("[", "null", "{\"course\": null, \"readRight\": []}", "")) {
            Files.writeString(broken.resolve("read-right.json"), damaged);
            assertThat(ReadRightNotes.of(broken)).as(damaged).isEmpty();
        }
        Files.writeString(broken.resolve("read-right.json"), "{\"course\": \"hives\", \"readRight\": [null]}");
        assertThat(ReadRightNotes.of(broken)).isEmpty();
        assertThat(ReadRightNotes.ofCourse(sessions, "hives")).isEmpty();
        assertThat(ReadRightNotes.ofCourse(sessions.resolve("nowhere"), "hives"))
                .isEmpty();
    }
}
