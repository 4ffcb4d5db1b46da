package org.bookholder.journal;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Audio;
import org.bookholder.timing.StreamTime;

/** The process that tests kill: writes events and audio as fast as it can and prints what was reported as safe. */
final class CrashChild {
    private static final SessionLocks LOCKS = new SessionLocks();

    static final int RATE = 16_000;
    static final int BLOCK = 800;
    private static final String NOTE = "n".repeat(20_000);

    private CrashChild() {}

    public static void main(String[] arguments) throws ProblemException, IOException, InterruptedException {
        Path folder = Path.of(arguments[1]);
        switch (arguments[0]) {
            case "write" -> write(folder);
            case "fill" -> fill(folder);
            case "hold" -> hold(folder);
            default -> throw new IllegalArgumentException("mode (" + arguments[0] + ") must be write, fill or hold");
        }
    }

    /** The event that a child appends {@code n}th. */
    static SessionEvent event(int n) {
        return new SessionEvent.PickupMarked(StreamTime.ofSamples((long) n * BLOCK, RATE), n + 1, "note " + n);
    }

    private static void write(Path folder) throws ProblemException {
        say("starting");
        SessionFolder session = SessionFolder.isSession(folder)
                ? SessionFolder.open(folder, LOCKS)
                : SessionFolder.create(folder, LOCKS);
        int first = session.journal().events().size();
        StreamTime start = StreamTime.ofSamples((long) first * BLOCK, RATE);
        TakeRecording recording = session.record(1, RATE, start);
        Thread syncing = new Thread(() -> syncForever(recording));
        syncing.setDaemon(true);
        syncing.start();
        for (int n = first; ; n++) {
            recording.append(Audio.block(start, RATE, (long) (n - first) * BLOCK, BLOCK));
            session.journal().append(event(n));
            say("safe " + (n + 1) + " " + (n + 1 - first) * BLOCK);
        }
    }

    private static void syncForever(TakeRecording recording) {
        try {
            while (true) {
                recording.sync();
            }
        } catch (ProblemException e) {
            say("problem " + e.getMessage());
        }
    }

    /** Writes both files until each takes no more. */
    private static void fill(Path folder) throws ProblemException {
        try (SessionFolder session = SessionFolder.create(folder, LOCKS)) {
            say("audio " + fillAudio(session));
            int events = 0;
            try {
                while (true) {
                    session.journal().append(new SessionEvent.PickupMarked(StreamTime.ZERO, events + 1, NOTE));
                    events++;
                }
            } catch (ProblemException e) {
                say("events " + events + " " + e.getMessage());
            }
        }
    }

    private static String fillAudio(SessionFolder session) throws ProblemException {
        try (TakeRecording recording = session.record(1, RATE, StreamTime.ZERO)) {
            for (long n = 0; ; n += RATE) {
                try {
                    recording.append(Audio.block(StreamTime.ZERO, RATE, n, RATE));
                } catch (ProblemException e) {
                    return n + " " + e.getMessage();
                }
            }
        }
    }

    /** Holds the folder until its input is closed. */
    private static void hold(Path folder) throws ProblemException, IOException {
        try (SessionFolder session = SessionFolder.open(folder, LOCKS)) {
            say("holding " + session.path().getFileName());
            while (System.in.read() >= 0) {
                // Waits for the end of input.
            }
        }
    }

    private static void say(String line) {
        System.out.println(line);
        System.out.flush();
    }
}
