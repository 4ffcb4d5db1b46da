package org.bookholder.app.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.review.ReviewSession;
import org.bookholder.app.session.HeardAs;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Troubles;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.Spoken;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A word that is heard as another one: decided once, remembered for the presenter in later sessions and other lessons. */
final class HeardAsAcrossSessionsTest {
    private static final int RATE = 16_000;
    private static final String FIRST = "Every wheel begins with its hub.";
    private static final String SECOND = "Then the wheel turns on a road.";

    @TempDir
    private Path folder;

    private final FakeEquipment equipment = new FakeEquipment();
    private Environment here = StoredExamples.here(Path.of(""));

    @BeforeEach
    void machine() {
        here = StoredExamples.here(folder, equipment);
    }

    @Test
    void whatWasDecidedInOneLessonHoldsInTheNextOneOfTheSamePresenter() throws ProblemException, IOException {
        Path first = session("one");
        assertThat(misread("Ann", first, FIRST, "garage")).isEqualTo(Outcome.MISREAD);
        assertThat(misread("Ann", session("two"), SECOND, "garage"))
                .as("nobody has decided yet")
                .isEqualTo(Outcome.MISREAD);
        decide(first);
        review(first);

        assertThat(misread("Ann", session("three"), SECOND, "garage")).isEqualTo(Outcome.CLEAN);
        assertThat(misread("Ann", session("four"), SECOND, "mountain"))
                .as("heard as something else again")
                .isEqualTo(Outcome.MISREAD);
        assertThat(misread("Ben", session("five"), SECOND, "garage"))
                .as("another presenter")
                .isEqualTo(Outcome.MISREAD);
        assertThat(review(session("three"))).as("heard again from its journal").isEqualTo(Outcome.CLEAN);
        assertThat(new HeardAs(here, "Ann").known()).containsExactly(AcceptedReading.heardAs("wheel", "garage"));

        new HeardAs(here, "Ann").forget("wheel", "garage");
        assertThat(misread("Ann", session("six"), SECOND, "garage")).isEqualTo(Outcome.MISREAD);
        assertThat(review(session("three")))
                .as("a session that was read with it stays as it was")
                .isEqualTo(Outcome.CLEAN);
        assertThat(review(first)).isEqualTo(Outcome.CLEAN);
        assertThat(new HeardAs(here, "Ann").known())
                .as("looking at the decision again is no new one")
                .isEmpty();
    }

    /** The decision is in the journal, and the program ended before anything else was written. */
    @Test
    void aKillJustAfterTheDecisionCostsNothingOnceTheSessionIsOpenedAgain() throws ProblemException, IOException {
        Path first = session("one");
        misread("Ann", first, FIRST, "garage");
        decide(first);
        assertThat(new HeardAs(here, "Ann").known()).isEmpty();
        assertThat(misread("Ann", first, FIRST, "garage")).as("read on").isEqualTo(Outcome.CLEAN);
        assertThat(new HeardAs(here, "Ann").known()).hasSize(1);
        assertThat(misread("Ann", session("two"), SECOND, "garage")).isEqualTo(Outcome.CLEAN);
    }

    @Test
    void aDecisionThatIsTakenBackIsForgotten() throws ProblemException, IOException {
        Path first = session("one");
        misread("Ann", first, FIRST, "garage");
        decide(first);
        review(first);
        append(first, new Remark.Signed("producer", new Remark.Retracted(1)));
        assertThat(review(first)).isEqualTo(Outcome.MISREAD);
        assertThat(new HeardAs(here, "Ann").known()).isEmpty();
        assertThat(misread("Ann", session("two"), SECOND, "garage")).isEqualTo(Outcome.MISREAD);
    }

    /** The demo's voice is nobody's: what is decided about it says nothing of the person who tries it. */
    @Test
    void theDemosVoiceTeachesNothing() throws ProblemException, IOException {
        Path demo = Files.createDirectories(here.demoScripts());
        Path tried = session("one");
        assertThat(misread("Ann", tried, FIRST, "garage", demo)).isEqualTo(Outcome.MISREAD);
        decide(tried);
        assertThat(review(tried)).isEqualTo(Outcome.CLEAN);
        assertThat(new HeardAs(here, "Ann").known()).isEmpty();
        assertThat(misread("Ann", session("two"), SECOND, "garage")).isEqualTo(Outcome.MISREAD);
    }

    private Path session(String name) {
        return here.sessions().resolve(name);
    }

    /** Reads a lesson of one line in which "wheel" is heard as something else; returns what became of the line. */
    private Outcome misread(String presenter, Path session, String line, String heard)
            throws ProblemException, IOException {
        return misread(presenter, session, line, heard, folder);
    }

    private Outcome misread(String presenter, Path session, String line, String heard, Path recordings)
            throws ProblemException, IOException {
        Path script = Files.writeString(folder.resolve(line.substring(0, line.indexOf(' ')) + ".md"), line + "\n");
        String said = line.toLowerCase(Locale.ROOT).replace(".", "");
        Spoken voice = new Spoken(0.5).isMisheard(said, "wheel", heard).pauses(1);
        equipment.hears(new FakeEars(voice.hypotheses()));
        Path audio = Wav.write(recordings.resolve("lesson.wav"), RATE, voice.sound(RATE));
        ReadingRequest request = new ReadingRequest(
                script,
                List.of(),
                Optional.of(presenter),
                Optional.of(session),
                false,
                Optional.empty(),
                Conduct.PLAIN,
                Optional.of(audio),
                Optional.empty(),
                false,
                false,
                true,
                Optional.empty(),
                Optional.empty(),
                folder);
        ReadingResult result = new ReadingService(here, request, new Unwatched(), new Unwatched()).read();
        return result.state().lines().notes(1).outcome();
    }

    /** Somebody decides that the line was read right; that is all that gets written. */
    private void decide(Path session) throws ProblemException {
        append(session, new Remark.Signed("producer", new Remark.Decided(1, Decision.Choice.NOT_A_FAULT, 1, 1)));
    }

    private void append(Path session, Remark remark) throws ProblemException {
        SessionState state;
        try (ReviewSession looked = ReviewSession.of(here, session)) {
            state = looked.state().get();
        }
        assertThat(state.lines().notes(1).attempts())
                .extracting(Attempt::ordinal)
                .containsExactly(1);
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            open.journal().append(new SessionEvent.Remarked(state.now(), remark));
        }
    }

    /** Opens the session for review and closes it again; returns what became of its line. */
    private Outcome review(Path session) throws ProblemException {
        try (ReviewSession review = ReviewSession.of(here, session)) {
            return review.state().get().lines().notes(1).outcome();
        }
    }

    /** Nobody watches the reading or ends it. */
    private static final class Unwatched implements ReadingListener, ReadingControl {
        @Override
        public void prepared(ReadingSetup setup) {}

        @Override
        public void opened(Path session, boolean continued) {}

        @Override
        public void recovering(List<Integer> takes) {}

        @Override
        public void progress(Progress progress) {}

        @Override
        public void deskOpened(RunningDesk desk) {}

        @Override
        public void stateChanged(SessionState state, boolean over) {}

        @Override
        public void troublesChanged(Troubles troubles) {}

        @Override
        public void stillListening(double seconds) {}

        @Override
        public void warned(String sentence) {}

        @Override
        public void noted(String sentence) {}

        @Override
        public boolean interrupted() {
            return false;
        }

        @Override
        public boolean finishRequested() {
            return false;
        }
    }
}
