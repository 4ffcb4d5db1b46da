package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.EventMender.Mended;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class EventMenderTest {
    private static final String TEXT = "Every wheel begins with its hub.\nThe rim comes last.\n";
    private static final SessionEvent OPENED = new SessionEvent.Opened(s(0), MORNING, "wheel", "wheel.md", TEXT);

    @TempDir
    private Path folder;

    @Test
    void wholeEventsStayAsTheyAre() {
        List<SessionEvent> events = List.of(
                OPENED, rolled(1, 1), moved(2, 1, 4, 3), settled(complete(1, 1, 1, 6, 1, 3)), cut(1, 4), rolled(2, 4));
        assertThat(EventMender.mend(folder, events)).isEqualTo(new Mended(events, false, List.of(), 0));
    }

    @Test
    void aMissingScriptIsThatOfTheCopyWithTheFirstTimeOfDay() throws IOException {
        Files.writeString(folder.resolve("script.md"), "# Wheels\n\n" + TEXT);
        Mended mended = EventMender.mend(folder, List.of(rolled(1, 30), cut(1, 40)));
        assertThat(mended.scriptCopied()).isTrue();
        assertThat(mended.events())
                .containsExactly(
                        new SessionEvent.Opened(
                                s(0),
                                MORNING.plusSeconds(30),
                                "Wheels",
                                folder.resolve("script.md").toString(),
                                "# Wheels\n\n" + TEXT),
                        rolled(1, 30),
                        cut(1, 40));
    }

    @Test
    void plainTextIsACopyToo() throws IOException {
        Files.writeString(folder.resolve("script.txt"), "# no heading here\n");
        assertThat(EventMender.mend(folder, List.of(rolled(1, 0))).events().get(0))
                .isInstanceOfSatisfying(
                        SessionEvent.Opened.class,
                        opened -> assertThat(opened.scriptText()).isEqualTo("# no heading here\n"));
    }

    @Test
    void aCopyThatIsNoScriptIsPassedOver() throws IOException {
        Files.writeString(folder.resolve("script.md"), "");
        assertThat(EventMender.mend(folder, List.of(rolled(1, 0))).events()).containsExactly(rolled(1, 0));
        Files.writeString(folder.resolve("script.txt"), TEXT);
        assertThat(EventMender.mend(folder, List.of(rolled(1, 0))).scriptCopied())
                .isTrue();
    }

    @Test
    void recordingsAndTheCopyOfTheScriptMakeASession() throws IOException {
        Path copy = Files.writeString(folder.resolve("script.md"), TEXT);
        Instant written = MORNING.plusSeconds(7);
        Files.setLastModifiedTime(copy, FileTime.from(written));
        record(1);
        record(2);
        record(4);

        Mended mended = EventMender.mend(folder, List.of());

        assertThat(mended.takesPutBack()).containsExactly(1, 2);
        assertThat(mended.events())
                .containsExactly(
                        new SessionEvent.Opened(s(0), written, "script", copy.toString(), TEXT),
                        new SessionEvent.TakeStarted(s(0), 1, written, "recording", ReadingPosition.START),
                        new SessionEvent.TakeStarted(s(0), 2, written, "recording", ReadingPosition.START));
        assertThat(mended.unfitting()).isZero();
    }

    @Test
    void nothingIsMadeOfNothing() throws IOException {
        Files.writeString(folder.resolve("script.md"), TEXT);
        assertThat(EventMender.mend(folder, List.of())).isEqualTo(new Mended(List.of(), false, List.of(), 0));
    }

    @Test
    void aTakeBeginsWhereTheOneBeforeItEnded() {
        record(2);
        Mended mended = EventMender.mend(
                folder,
                List.of(OPENED, rolled(1, 1), cut(1, 9), moved(12, 1, 3, 2), settled(complete(2, 1, 1, 6, 10, 13))));
        assertThat(mended.takesPutBack()).containsExactly(2);
        assertThat(mended.events().get(3))
                .isEqualTo(new SessionEvent.TakeStarted(
                        s(9), 2, MORNING.plusSeconds(9), "recording", ReadingPosition.START));
        assertThat(mended.events()).hasSize(6);
    }

    @Test
    void aTakeWithoutARecordingHasNoSourceOfSound() {
        Mended mended = EventMender.mend(folder, List.of(OPENED, cut(1, 9), rolled(2, 10)));
        assertThat(mended.events())
                .containsExactly(
                        OPENED,
                        new SessionEvent.TakeStarted(s(0), 1, MORNING, "", ReadingPosition.START),
                        cut(1, 9),
                        rolled(2, 10));
    }

    @Test
    void aTakeIsPutBackBeforeWhatIsKnownOfALaterOne() {
        Mended mended = EventMender.mend(folder, List.of(OPENED, rolled(2, 10), cut(2, 20)));
        assertThat(mended.takesPutBack()).containsExactly(1);
        assertThat(mended.events()).extracting(SessionEvent::at).containsExactly(s(0), s(0), s(10), s(20));
    }

    @Test
    void anEventThatContradictsTheOthersIsLeftOut() {
        SessionEvent unknownLine = settled(complete(1, 1, 99, 6, 1, 3));
        Mended mended = EventMender.mend(folder, List.of(OPENED, rolled(1, 1), unknownLine, cut(1, 4)));
        assertThat(mended.events()).containsExactly(OPENED, rolled(1, 1), cut(1, 4));
        assertThat(mended.unfitting()).isEqualTo(1);
    }

    private void record(int take) {
        Wav.write(SessionFolder.takeFile(folder, take), 16_000, Wav.sine(200, 0.1, 16_000, 0.1));
    }
}
