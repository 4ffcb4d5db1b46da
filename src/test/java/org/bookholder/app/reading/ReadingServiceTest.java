package org.bookholder.app.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.session.PickupRound;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Troubles;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.Ear;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Grammar;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.Spoken;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A reading from its request to its result, in this process; the recogniser is a fake one. */
final class ReadingServiceTest {
    private static final int RATE = 16_000;
    private static final Spoken VOICE = new Spoken(0.5)
            .says("every wheel begins with its hub")
            .says("the rim comes last")
            .pauses(1);

    @TempDir
    private Path folder;

    private final FakeEars ears = new FakeEars(VOICE.hypotheses());
    private final FakeEquipment equipment = new FakeEquipment();
    private final Told listener = new Told();
    private Path script = Path.of("");
    private Path session = Path.of("");
    private List<String> speakers = List.of();
    private Environment here = StoredExamples.here(Path.of(""));

    @BeforeEach
    void writeScript() throws IOException {
        script = folder.resolve("lesson.md");
        session = folder.resolve("session");
        here = StoredExamples.here(folder, equipment);
        equipment.hears(ears);
        Files.writeString(script, "Every wheel begins with its hub.\nThe rim comes last.\n");
    }

    @Test
    void unlocksTheSessionIfWhatFollowsItsOpeningFails() throws ProblemException {
        listener.failsWhenOpened = true;
        assertThatThrownBy(() -> service(request(recording())).read())
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no terminal");
        try (SessionFolder again = SessionFolder.open(session, here.locks())) {
            assertThat(again.journal().events()).isEmpty();
        }
    }

    @Test
    void readsARecordingToItsEnd() throws ProblemException {
        ReadingResult result = service(request(recording())).read();

        assertThat(listener.told)
                .startsWith("prepared, lesson.wav", "opened, new")
                .endsWith("over");
        assertThat(result.fault()).isEmpty();
        assertThat(result.partFailed()).isFalse();
        assertThat(result.unsaved()).isEmpty();
        assertThat(result.state().lines().notes(1).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(result.state().following().position()).isEqualTo(new ReadingPosition(3, 1));
        assertThat(session).isDirectoryContaining("glob:**/take-001.wav").isDirectoryContaining("glob:**/script.md");
        try (SessionFolder again = SessionFolder.open(session, here.locks())) {
            assertThat(again.events()).last().isInstanceOf(SessionEvent.TakeSettled.class);
        }
        assertThat(ears.closed()).isTrue();
        assertThat(ears.open()).isZero();
    }

    @Test
    void howThingsAreSaidIsRememberedForTheCourse() throws ProblemException, IOException {
        Files.writeString(script, "Add 5 kg of flour to the bowl.\nThen stir 7 kg of sugar into it.\n");
        Spoken voice = new Spoken(0.5)
                .says("add five kilos of flour to the bowl")
                .says("then stir seven kilos of sugar into it")
                .pauses(1);
        equipment.hears(new FakeEars(voice.hypotheses()));
        session = here.sessions().resolve("one");
        Path audio = Wav.write(folder.resolve("lesson.wav"), RATE, voice.sound(RATE));
        ReadingResult result = service(request(Optional.of(audio))).read();
        assertThat(result.state().lines().notes(2).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(new CourseHabits(here).known(script).sayings())
                .extracting(CourseHabits.Saying::written, CourseHabits.Saying::said)
                .containsExactly(tuple("5 kg", "five kilos"), tuple("7 kg", "seven kilos"));

        Files.writeString(script, "Weigh 9 kg again.\n");
        session = here.sessions().resolve("two");
        equipment.hears(new FakeEars(List.of()));
        service(request(recording())).read();
        assertThat(listener.prepared.orElseThrow().lines().get(0).get(1).preferred())
                .containsExactly("nine", "kilos");
    }

    @Test
    void goesOnInASessionThatIsThereAlready() throws ProblemException {
        service(request(recording())).read();
        equipment.hears(new FakeEars(List.of()));
        ReadingResult result = service(request(recording())).read();
        assertThat(result.state().takes().all()).hasSize(2);
        assertThat(result.state().lines().notes(1).outcome()).isEqualTo(Outcome.CLEAN);
    }

    @Test
    void readsTheLinesOfTheSpeakersThatAreAskedFor() throws ProblemException, IOException {
        Files.writeString(script, "HOST: Every wheel begins with its hub.\n\nGUEST: The rim comes last.\n");
        speakers = List.of("guest");
        ReadingResult result = service(request(recording())).read();
        assertThat(result.state().script().lines()).extracting(ScriptLine::text).containsExactly("The rim comes last.");
        assertThat(result.state().lines().notes(1).outcome()).isEqualTo(Outcome.CLEAN);
        try (SessionFolder again = SessionFolder.open(session, here.locks())) {
            assertThat(Replay.lastText(again.events()))
                    .hasValueSatisfying(text -> assertThat(text).startsWith("%speaker: guest\nHOST: Every"));
        }
    }

    /** Such as for the pickups of a session, which home reads without naming anybody. */
    @Test
    void aSessionThatIsGoneOnWithKeepsItsSpeakers() throws ProblemException, IOException {
        Files.writeString(script, "HOST: Every wheel begins with its hub.\n\nGUEST: The rim comes last.\n");
        speakers = List.of("guest");
        service(request(recording())).read();
        speakers = List.of();
        ReadingResult result = service(request(recording())).read();
        assertThat(result.state().script().lines()).extracting(ScriptLine::text).containsExactly("The rim comes last.");
        speakers = List.of("host", "guest");
        assertThat(service(request(recording())).read().state().script().lines())
                .hasSize(2);
    }

    @Test
    void beginsAtTheLineThatIsAskedFor() throws ProblemException {
        equipment.hears(new FakeEars(List.of()));
        ReadingResult result = service(from(2, recording())).read();
        assertThat(result.state().following().position()).isEqualTo(new ReadingPosition(2, 1));
    }

    /** The round is led by its pickups, and would begin at line 1. */
    @Test
    void aRoundThatWasBrokenOffEndsWhereALineIsAskedFor() throws ProblemException {
        SessionState first = service(request(recording())).read().state();
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            open.journal().append(new SessionEvent.PickupMarked(first.now(), 1, ""));
            PickupRound round = new PickupRound(PickupRound.Step.READING, 1, 1, 0, "");
            open.journal().append(new SessionEvent.RoundMoved(first.now(), round));
        }
        equipment.hears(new FakeEars(List.of()));
        ReadingResult result = service(from(2, recording())).read();
        assertThat(result.state().round().isOn()).isFalse();
        assertThat(result.state().following().position()).isEqualTo(new ReadingPosition(2, 1));
    }

    @Test
    void aLineThatIsNotThereIsRefusedBeforeASessionBegins() {
        for (int line : new int[] {0, 3}) {
            assertThatThrownBy(() -> service(from(line, recording())).read())
                    .isInstanceOf(ProblemException.class)
                    .hasMessageContaining("there is no line " + line)
                    .hasMessageContaining("from 1 to 2");
        }
        assertThat(session).doesNotExist();
        assertThat(listener.told).isEmpty();
    }

    @Test
    void aReadingInterruptedBeforeItBeginsLeavesNoSession() {
        listener.interrupted = true;
        assertThatThrownBy(() -> service(request(recording())).read()).isInstanceOf(OperationInterrupted.class);
        assertThat(session).doesNotExist();
        assertThat(ears.closed()).isTrue();
    }

    @Test
    void anInterruptedReadingKeepsWhatWasReadSoFar() throws ProblemException {
        // An interrupted reading must end long before this minute is over.
        equipment.hasMicrophone(new PacedSource(FakeAudioSource.of(RATE, new short[60 * RATE]), here.nanoTime()));
        listener.whenTold("line 1", () -> listener.interrupted = true);
        ReadingResult result = service(request(Optional.empty())).read();
        assertThat(result.fault()).isEmpty();
        assertThat(result.state().takes().rolling()).isFalse();
        assertThat(result.state().takes().all()).hasSize(1);
        assertThat(session.resolve("take-001.wav")).exists();
    }

    @Test
    void aMicrophoneThatBreaksEndsNothingAndIsTold() throws ProblemException {
        equipment.hasMicrophone(
                FakeAudioSource.of(RATE, new short[RATE]).then(new AudioRead.Gone("the microphone was unplugged")));
        listener.whenTold("NO_SOUND", () -> listener.finish = true);
        ReadingResult result = service(request(Optional.empty())).read();
        assertThat(listener.told).contains("prepared, a fake microphone", "NO_SOUND");
        assertThat(result.fault()).isEmpty();
        assertThat(result.unsaved()).isEmpty();
        assertThat(result.state().takes().all()).hasSize(1);
    }

    @Test
    void withoutAMicrophoneNoSessionBegins() {
        assertThatThrownBy(() -> service(request(Optional.empty())).read())
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("there is no microphone");
        assertThat(session).doesNotExist();
    }

    @Test
    void aFaultInTheOpenEarIsLoggedAndTheReadingGoesOn() throws ProblemException, IOException {
        equipment.hears(new FaultyOpenEar(ears, new AtomicBoolean()));
        ReadingResult result = service(request(recording())).read();
        assertThat(result.fault()).isEmpty();
        assertThat(result.partFailed()).isTrue();
        assertThat(result.log())
                .content()
                .containsOnlyOnce("stage '")
                .contains("stage 'open ear': failed, is started again", "a planted fault");
        assertThat(result.state().following().position()).isEqualTo(new ReadingPosition(3, 1));
        assertThat(result.state().takes().rolling()).isFalse();
    }

    private ReadingService service(ReadingRequest request) {
        return new ReadingService(here, request, listener, listener);
    }

    private Optional<Path> recording() {
        return Optional.of(Wav.write(folder.resolve("lesson.wav"), RATE, VOICE.sound(RATE)));
    }

    private ReadingRequest request(Optional<Path> audio) {
        return request(Optional.empty(), audio);
    }

    private ReadingRequest from(int line, Optional<Path> audio) {
        return request(Optional.of(line), audio);
    }

    private ReadingRequest request(Optional<Integer> from, Optional<Path> audio) {
        return new ReadingRequest(
                script,
                speakers,
                Optional.empty(),
                Optional.of(session),
                false,
                from,
                Conduct.PLAIN,
                audio,
                Optional.empty(),
                false,
                false,
                true,
                Optional.empty(),
                Optional.empty(),
                folder);
    }

    /** Notes what a reading reports, each thing once, and ends it when a test says so. */
    private static final class Told implements ReadingListener, ReadingControl {
        private final List<String> told = new ArrayList<>();
        private final Map<String, Runnable> then = new HashMap<>();
        private Optional<PreparedScript> prepared = Optional.empty();
        private boolean interrupted;
        private boolean finish;
        private boolean failsWhenOpened;

        void whenTold(String text, Runnable action) {
            then.put(text, action);
        }

        private void note(String text) {
            if (!told.contains(text)) {
                told.add(text);
            }
            then.getOrDefault(text, () -> {}).run();
        }

        @Override
        public void prepared(ReadingSetup setup) {
            note("prepared, " + setup.source().orElse("no sound"));
            prepared = Optional.of(setup.prepared());
        }

        @Override
        public void opened(Path session, boolean continued) {
            if (failsWhenOpened) {
                throw new IllegalStateException("no terminal");
            }
            note("opened, " + (continued ? "continued" : "new"));
        }

        @Override
        public void recovering(List<Integer> takes) {
            note("recovering " + takes);
        }

        @Override
        public void progress(Progress progress) {}

        @Override
        public void deskOpened(RunningDesk desk) {
            note("desk");
        }

        @Override
        public void stateChanged(SessionState state, boolean over) {
            note("line " + state.following().position().line());
            if (over) {
                note("over");
            }
        }

        @Override
        public void troublesChanged(Troubles troubles) {
            troubles.all().forEach(trouble -> note(trouble.kind().name()));
        }

        @Override
        public void stillListening(double seconds) {}

        @Override
        public void warned(String sentence) {
            note("warned: " + sentence);
        }

        @Override
        public void noted(String sentence) {
            note("noted: " + sentence);
        }

        @Override
        public boolean interrupted() {
            return interrupted;
        }

        @Override
        public boolean finishRequested() {
            return finish;
        }
    }

    /** Ears whose first open ear cannot be created. */
    private record FaultyOpenEar(Ears ears, AtomicBoolean failed) implements Ears {
        @Override
        public Vocabulary vocabulary() {
            return ears.vocabulary();
        }

        @Override
        public Ear scriptEar(Grammar grammar, int rate) {
            return ears.scriptEar(grammar, rate);
        }

        @Override
        public Ear openEar(int rate) {
            if (failed.compareAndSet(false, true)) {
                throw new IllegalStateException("a planted fault");
            }
            return ears.openEar(rate);
        }

        @Override
        public void close() {
            ears.close();
        }
    }
}
