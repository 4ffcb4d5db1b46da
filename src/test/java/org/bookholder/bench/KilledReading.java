package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.cli.Main;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.recovery.SessionRecovery;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.Ears;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Labels;

/**
 * Compares the demo's reading, killed in another process and then settled, with the same reading cut normally at the
 * sample where the recording ends.
 */
final class KilledReading {
    /** Word times differ a little from run to run: the recogniser adds noise of its own to the sound. */
    private static final double SAME_SECONDS = 0.1;

    private static final Path HOME =
            Path.of(System.getProperty("bookholder.home", "")).toAbsolutePath();
    private static final Path LESSON = HOME.resolve("demo-scripts/lesson-1.md");
    private static final Path READING = HOME.resolve("demo-scripts/lesson-1.wav");
    static final Path MODEL = HOME.resolve("models/vosk-model-en-us");

    private final Path session;
    private final Ears ears;

    /** Keeps the reading in {@code session}; {@code ears} listen to what the kill left. */
    KilledReading(Path session, Ears ears) {
        this.session = session;
        this.ears = ears;
    }

    /**
     * The effect of a kill.
     *
     * @param seconds how much was recorded
     * @param unknownBefore lines read clean that were missing from the killed session
     * @param differences differences between the settled notes and those of the normal cut, one line each
     */
    record Outcome(double seconds, int unknownBefore, List<String> differences) {}

    /** Begins to read as fast as it can, kills the program after a while, and compares. */
    Outcome killAfter(long millis) throws IOException, InterruptedException, ProblemException {
        try (ChildJvm child = start(LESSON, READING, session)) {
            child.readTo("Session:");
            child.endsWithin(millis);
            child.kill();
        }
        List<SessionEvent> left = events();
        if (SessionRecovery.unsettled(left).isEmpty()) {
            return new Outcome(0, 0, List.of());
        }
        short[] recorded = recorded();
        try (SessionFolder folder = SessionFolder.open(session, new SessionLocks())) {
            List<String> troubles =
                    SessionRecovery.settle(folder, ears, FatigueLimits.defaults(), (take, heard, length) -> {});
            if (!troubles.isEmpty()) {
                throw new IllegalStateException(troubles.toString());
            }
        }
        SessionState settled = state(events());
        SessionState orderly = recorded.length == 0
                ? state(left.subList(0, 1))
                : ReadingRun.read(Files.readString(LESSON), FakeAudioSource.of(Sound.RATE, recorded), ears)
                        .state();
        double seconds = (double) recorded.length / Sound.RATE;
        return new Outcome(seconds, unknown(state(left), orderly), differences(settled, orderly));
    }

    /** Begins to read a recording into a session, as fast as it can, in a process of its own. */
    static ChildJvm start(Path script, Path sound, Path session) throws IOException {
        return ChildJvm.start(
                Main.class,
                "read",
                script.toString(),
                "--audio",
                sound.toString(),
                "--no-window",
                "--unpaced",
                "--model",
                MODEL.toString(),
                "--session",
                session.toString());
    }

    private List<SessionEvent> events() throws ProblemException {
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            return folder.journal().events();
        }
    }

    private short[] recorded() throws ProblemException {
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            Optional<TakeAudio> audio = folder.audio(1, StreamTime.ZERO);
            if (audio.isEmpty()) {
                return new short[0];
            }
            try (TakeAudio open = audio.get()) {
                return open.read(StreamTime.ZERO, open.end()).orElseThrow().samples();
            }
        }
    }

    /** The state that a session's events lead to. */
    static SessionState state(List<SessionEvent> events) throws ProblemException {
        SessionEvent.Opened opened = Replay.firstOpened(events).orElseThrow();
        return Session.apply(
                Session.begin(
                        ScriptReader.parse(opened.scriptText(), opened.source(), Format.MARKDOWN),
                        FatigueLimits.defaults()),
                events);
    }

    private static int unknown(SessionState left, SessionState orderly) {
        int count = 0;
        for (int i = 0; i < orderly.lines().count(); i++) {
            boolean clean = orderly.lines().notes(i + 1).best().isPresent()
                    && !orderly.lines().notes(i + 1).pickup();
            boolean missing = left.lines().notes(i + 1).attempts().isEmpty();
            count += clean && missing ? 1 : 0;
        }
        return count;
    }

    private static List<String> differences(SessionState settled, SessionState orderly) {
        List<String> differences = new ArrayList<>();
        for (int i = 0; i < orderly.lines().count(); i++) {
            LineNotes a = settled.lines().notes(i + 1);
            LineNotes b = orderly.lines().notes(i + 1);
            if (a.outcome() != b.outcome() || a.pickup() != b.pickup() || !sameAttempts(a.attempts(), b.attempts())) {
                differences.add("line " + a.line() + ": " + told(a) + " in place of " + told(b));
            }
        }
        if (!sameAsides(settled.lines().asides(), orderly.lines().asides())) {
            differences.add("asides: " + settled.lines().asides() + " in place of "
                    + orderly.lines().asides());
        }
        return differences;
    }

    private static String told(LineNotes notes) {
        StringBuilder told = new StringBuilder(Labels.of(notes.outcome()));
        for (Attempt a : notes.attempts()) {
            told.append(String.format(
                    Locale.ROOT,
                    " %.2f-%.2f%s",
                    a.start().seconds(),
                    a.end().seconds(),
                    a.complete() ? "" : " incomplete"));
        }
        return told.toString();
    }

    private static boolean sameAttempts(List<Attempt> a, List<Attempt> b) {
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            boolean same = near(a.get(i).start(), b.get(i).start())
                    && near(a.get(i).end(), b.get(i).end())
                    && a.get(i).outcome() == b.get(i).outcome();
            if (!same) {
                return false;
            }
        }
        return a.size() == b.size();
    }

    private static boolean sameAsides(List<Aside> a, List<Aside> b) {
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            if (!near(a.get(i).start(), b.get(i).start())
                    || !near(a.get(i).end(), b.get(i).end())) {
                return false;
            }
        }
        return a.size() == b.size();
    }

    private static boolean near(StreamTime a, StreamTime b) {
        return Math.abs(a.seconds() - b.seconds()) <= SAME_SECONDS;
    }
}
