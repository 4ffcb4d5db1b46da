package org.bookholder.app.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class HandOffServiceTest {
    @TempDir
    private Path folder;

    private Path session;
    private Environment here;

    @BeforeEach
    void write() throws ProblemException {
        session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        here = StoredExamples.here(folder);
    }

    @Test
    void writesTheWholeHandOffAndNamesItsFiles() throws ProblemException {
        HandOffService.Written written = service(Interruption.NONE).write(session);
        assertThat(written.summary())
                .matches("2 clips, 4 gaps \\(lines 2, 3, 4 and 6\\), \\d\\d:\\d\\d:\\d\\d:\\d\\d at 25");
        assertThat(written.notes()).singleElement().asString().startsWith("No chapters: the script has no headings");
        assertThat(written.files())
                .isNotEmpty()
                .allMatch(file -> file.startsWith(HandOffRequest.usualFolder(session)))
                .allMatch(file -> file.toFile().isFile());
    }

    @Test
    void usesTheSoundOfFootageThatWasKeptWithAPictureWithoutWidth() throws ProblemException, IOException {
        Footage camera = new Footage(
                folder.resolve("CAMERA01.MP4"),
                s(60),
                Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_25, false)),
                Optional.of(new Footage.Sound(48_000, 2, "aac")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        FootageNotes.keep(session, List.of(new PlacedFootage(camera, List.of(Placement.whole(1, s(0), s(60))))));
        Path notes = session.resolve("footage.json");
        Files.writeString(notes, Files.readString(notes).replace("3840", "0"));
        HandOffService.Written written = service(Interruption.NONE).write(session);
        assertThat(written.files().stream()
                        .filter(file -> file.toString().endsWith(".otio"))
                        .toList())
                .singleElement()
                .satisfies(file -> assertThat(file).content().contains("CAMERA01.MP4"));
    }

    @Test
    void namesFootageThatHasMovedAndPicturesOfAnotherRate() throws ProblemException {
        Footage camera = new Footage(
                folder.resolve("gone").resolve("CAMERA01.MP4"),
                s(60),
                Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_29_97, false)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        FootageNotes.keep(session, List.of(new PlacedFootage(camera, List.of(Placement.whole(1, s(0), s(60))))));
        assertThat(service(Interruption.NONE).write(session).remarks())
                .containsExactly(camera.file()
                        + ": it is not there any more; the hand-off still points to this place. Put it back,"
                        + " or match it again where it is now");
        HandOffRequest usual = HandOffRequest.usual(here.equipment().handOffParts(), true);
        HandOffRequest other = new HandOffRequest(
                usual.out(),
                usual.parts(),
                false,
                Optional.of(FrameRate.FPS_25),
                Optional.empty(),
                false,
                1920,
                1080,
                true);
        assertThat(new HandOffService(here, other, Interruption.NONE)
                        .write(session)
                        .remarks())
                .contains("CAMERA01.MP4: it has 29.97 frames a second, but the hand-off counts 25; use it in a project"
                        + " of 25, or choose the rate 29.97");
    }

    /** A session's own recordings carry no time of day, those of a hand-off do. */
    @Test
    void withoutTheTakesAListCountsFromTheBeginningOfTheRecording() throws ProblemException, IOException {
        List<HandOffPart> edl = here.equipment().handOffParts().stream()
                .filter(part -> part.name().equals("edl"))
                .toList();
        HandOffRequest only = HandOffRequest.usual(edl, false);
        Path list = new HandOffService(here, only, Interruption.NONE)
                .write(session)
                .files()
                .get(0);
        assertThat(Files.readAllLines(list)).anyMatch(line -> line.matches("001 +TAKE001 +A +C +00:00:0.*"));
        assertThat(list).content().contains("* SOURCE FILE: ../take-001.wav");
    }

    @Test
    void changesNothingIfInterrupted() {
        assertThatThrownBy(() -> service(new Interruption(() -> true)).write(session))
                .isInstanceOf(OperationInterrupted.class);
        assertThat(HandOffRequest.usualFolder(session)).doesNotExist();
    }

    @Test
    void leavesOutFilesThatNeedSoundIfNothingWasRecorded() throws ProblemException {
        assertThat(session.resolve("take-001.wav").toFile().delete()).isTrue();
        List<String> remarks = service(Interruption.NONE).write(session).remarks();
        assertThat(remarks).contains("no take was recorded; the files that need sound are left out");
    }

    private HandOffService service(Interruption stop) {
        return new HandOffService(here, HandOffRequest.usual(here.equipment().handOffParts(), false), stop);
    }
}
