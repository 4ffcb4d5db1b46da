package org.bookholder.runtime.recovery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.ReplayedSession;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SessionRecoveryTest {
    private static final int RATE = ReadingRig.RATE;
    private static final String[] LINES = {
        "Every wheel begins with its hub.", "Count the spokes twice.", "Then lace the first side.", "Turn it over."
    };
    private static final String TEXT = String.join("\n\n", LINES) + "\n";
    private static final Script SCRIPT = Scripts.of(LINES);

    /** The second line is said while the take is held, the third after a hand has gone there. */
    private static final Spoken VOICE = new Spoken(0.5)
            .says("every wheel begins with its hub")
            .says("count the spokes twice")
            .says("then lace the first side")
            .says("well that was fine i think")
            .says("turn it over")
            .pauses(0.5);

    private static final double HELD = 3.3;
    private static final double RESUMED = 5.2;

    @TempDir
    private Path folder;

    private Path session;
    private List<SessionEvent> orderly = List.of();
    private short[] recorded = new short[0];

    @BeforeEach
    void readInOrder() {
        session = folder.resolve("session");
        ReadingRig rig = new ReadingRig(SCRIPT, new FakeEars(VOICE.hypotheses()), true);
        FakeAudioSource sound = FakeAudioSource.of(RATE, VOICE.sound(RATE));
        Reading reading = rig.begin(new PacedSource(sound, rig.clock));
        rig.pass(HELD);
        reading.tell(new TakeCommand.Hold());
        rig.pass(RESUMED - HELD);
        reading.tell(new TakeCommand.Resume());
        reading.tell(new TakeCommand.GoTo(new ReadingPosition(3, 1), Mover.HAND));
        rig.pass(VOICE.seconds());
        reading.tell(new TakeCommand.Quit());
        rig.pass(1);
        orderly =
                rig.journal.events().stream().map(SessionRecoveryTest::withText).toList();
        recorded = VOICE.sound(RATE);
    }

    private static SessionEvent withText(SessionEvent event) {
        return event instanceof SessionEvent.Opened o
                ? new SessionEvent.Opened(o.at(), o.when(), o.title(), "wheel.md", TEXT)
                : event;
    }

    @Test
    void givesTheNotesOfAnOrderlyCutWhereverTheJournalEnds() throws ProblemException, IOException {
        SessionState whole = state(orderly);
        assertThat(outcomes(whole)).containsExactly(Outcome.CLEAN, Outcome.SKIPPED, Outcome.CLEAN, Outcome.CLEAN);
        for (int end = lastAct() + 1; end < orderly.size(); end++) {
            List<SessionEvent> kept = keep(orderly.subList(0, end));
            assertThat(settle()).isEmpty();
            SessionState settled = state(events());
            assertThat(settled.lines()).as("after %s", kept.get(end - 1)).isEqualTo(whole.lines());
            assertThat(settled.following().position())
                    .isEqualTo(whole.following().position());
            assertThat(settled.takes().rolling()).isFalse();
            clear();
        }
    }

    @Test
    void isDoneOnce() throws ProblemException {
        keep(orderly.subList(0, orderly.size() - 2));
        settle();
        List<SessionEvent> after = events();
        assertThat(SessionRecovery.unsettled(after)).isEmpty();
        settle();
        assertThat(events()).isEqualTo(after);
    }

    @Test
    void usesTheTextThatWasReadEvenIfItHasChangedSince() throws ProblemException {
        List<SessionEvent> kept = new ArrayList<>(orderly.subList(0, orderly.size() - 1));
        kept.removeIf(SessionEvent.AttemptSettled.class::isInstance);
        kept.add(new SessionEvent.TextChanged(kept.get(kept.size() - 1).at(), "First a word.\n\n" + TEXT));
        keep(kept);
        assertThat(settle()).isEmpty();
        assertThat(outcomes(state(events())))
                .containsExactly(Outcome.SKIPPED, Outcome.CLEAN, Outcome.SKIPPED, Outcome.CLEAN, Outcome.CLEAN);
    }

    @Test
    void leavesATakeAsItWasIfInterrupted() throws ProblemException {
        List<SessionEvent> kept = keep(orderly.subList(0, orderly.size() - 2));
        try (SessionFolder open = SessionFolder.open(session, new SessionLocks())) {
            assertThat(catchThrowable(() -> SessionRecovery.settle(
                            open, new FakeEars(VOICE.hypotheses()), FatigueLimits.defaults(), (take, heard, length) -> {
                                throw new IllegalStateException("enough");
                            })))
                    .hasMessage("enough");
        }
        assertThat(events()).isEqualTo(kept);
    }

    @Test
    void aTakeWithoutItsSoundStaysAsItWasAndIsReported() throws ProblemException, IOException {
        List<SessionEvent> kept = keep(orderly.subList(0, orderly.size() - 2));
        Path take = session.resolve("take-001.wav");
        Files.delete(take);
        assertThat(settle()).singleElement().asString().contains("take 1", "its sound is missing");
        Files.write(take, new byte[0]);
        assertThat(settle()).singleElement().asString().contains("take 1", "its sound is missing");
        Files.write(take, new byte[100_000]);
        assertThat(settle()).singleElement().asString().contains("take 1", "is not the recording of a take");
        assertThat(events()).isEqualTo(kept);
    }

    @Test
    void aTakeThatWasKilledBeforeItsFirstSampleIsEmpty() throws ProblemException {
        recorded = new short[0];
        keep(orderly.subList(0, 2));
        assertThat(settle()).isEmpty();
        SessionState settled = state(events());
        assertThat(settled.takes().rolling()).isFalse();
        assertThat(settled.lines().pickups()).isEmpty();
    }

    @Test
    void settledAttemptsAfterTheEndOfTheRecordingAreKept() throws ProblemException {
        recorded = Arrays.copyOf(recorded, 3 * RATE);
        keep(orderly.subList(0, orderly.size() - 2));
        assertThat(settle()).singleElement().asString().contains("only the first 3 s");
        assertThat(outcomes(state(events())))
                .containsExactly(Outcome.CLEAN, Outcome.SKIPPED, Outcome.CLEAN, Outcome.CLEAN);
    }

    private int lastAct() {
        int last = 0;
        for (int i = 0; i < orderly.size(); i++) {
            if (orderly.get(i) instanceof SessionEvent.PositionMoved moved && moved.mover() == Mover.HAND) {
                last = i;
            }
        }
        return last;
    }

    private List<SessionEvent> keep(List<SessionEvent> events) throws ProblemException {
        try (SessionFolder created = SessionFolder.create(session, new SessionLocks())) {
            for (SessionEvent event : events) {
                created.journal().append(event);
            }
        }
        Wav.write(session.resolve("take-001.wav"), RATE, recorded);
        return List.copyOf(events);
    }

    private void clear() throws IOException {
        try (Stream<Path> files = Files.list(session)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
    }

    private List<String> settle() throws ProblemException {
        try (SessionFolder open = SessionFolder.open(session, new SessionLocks())) {
            return SessionRecovery.settle(
                    open, new FakeEars(VOICE.hypotheses()), FatigueLimits.defaults(), (take, heard, length) -> {});
        }
    }

    private List<SessionEvent> events() throws ProblemException {
        try (SessionFolder open = SessionFolder.openForReading(session)) {
            return open.journal().events();
        }
    }

    private static SessionState state(List<SessionEvent> events) {
        return ReplayedSession.of(SCRIPT, FatigueLimits.defaults(), events).state();
    }

    private static List<Outcome> outcomes(SessionState state) {
        return state.lines().all().stream().map(LineNotes::outcome).toList();
    }
}
