package org.bookholder.runtime.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeEnd;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Going on in a session that a version wrote which made one line of two sentences. */
final class ResumptionTest {
    private static final String TEXT = "Hello, and welcome. This is a wheel.\n\nToday we look at one tired wheel.\n";
    private static final RecordedLines THEN = new RecordedLines(List.of(
            List.of("Hello,", "and", "welcome.", "This", "is", "a", "wheel."),
            List.of("Today", "we", "look", "at", "one", "tired", "wheel.")));

    @TempDir
    private Path folder;

    private final List<MendedScript> told = new ArrayList<>();
    private Script today;

    @BeforeEach
    void read() throws ProblemException {
        today = ScriptReader.parse(TEXT, "wheel.md", Format.MARKDOWN);
    }

    @Test
    void linesThatAreDividedInAnotherWayTodayAreNewAndTheOthersKeepTheirNotes() throws ProblemException {
        SessionState state = resumed(THEN);
        assertThat(state.script().lines())
                .extracting(ScriptLine::text)
                .containsExactly("Hello, and welcome.", "This is a wheel.", "Today we look at one tired wheel.");
        assertThat(state.lines().notes(1).attempts()).isEmpty();
        assertThat(state.lines().notes(3).attempts()).hasSize(1);
        assertThat(told)
                .singleElement()
                .satisfies(
                        mended -> assertThat(mended.sentence())
                                .isEqualTo(
                                        "this version divides the script into other lines; 1 of its 2 lines keep their notes, and 2 lines are new"));
    }

    @Test
    void itIsEnteredOnce() throws ProblemException {
        resumed(THEN);
        told.clear();
        try (SessionFolder session = SessionFolder.open(folder, new SessionLocks())) {
            int before = session.events().size();
            Resumption.of(session, today, TEXT, FatigueLimits.defaults(), told::add);
            assertThat(session.events()).hasSize(before);
        }
        assertThat(told).isEmpty();
    }

    @Test
    void withTheSameLinesNothingIsEntered() throws ProblemException {
        SessionState state = resumed(RecordedLines.UNKNOWN);
        assertThat(state.lines().notes(2).attempts()).hasSize(1);
        assertThat(told).isEmpty();
    }

    private SessionState resumed(RecordedLines lines) throws ProblemException {
        try (SessionFolder session = SessionFolder.create(folder, new SessionLocks())) {
            for (SessionEvent event : List.of(
                    new SessionEvent.Opened(s(0), MORNING, "Wheel", "wheel.md", TEXT, lines),
                    new SessionEvent.TakeStarted(s(0), 1, MORNING, "a microphone", ReadingPosition.START),
                    new SessionEvent.TakeEnded(s(9), 1, MORNING.plusSeconds(9), TakeEnd.CUT),
                    new SessionEvent.TakeSettled(
                            s(9), 1, List.of(complete(1, 1, 1, 3, 1, 4), complete(1, 2, 2, 4, 5, 8)), List.of()))) {
                session.journal().append(event);
            }
            return Resumption.of(session, today, TEXT, FatigueLimits.defaults(), told::add)
                    .state();
        }
    }
}
