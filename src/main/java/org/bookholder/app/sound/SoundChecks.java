package org.bookholder.app.sound;

import java.time.Instant;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.sound.SoundCheck;
import org.jspecify.annotations.Nullable;

/**
 * Sound checks that a page asks for, one at a time.
 *
 * <p>A stage; a step of it is a whole check, which {@link #stop} ends soon. The other methods are safe for use by several threads.
 */
public final class SoundChecks implements Stage {
    /** How long the room is measured, in seconds. */
    public static final double ROOM_SECONDS = 5;

    /** How long the voice is measured, in seconds. */
    public static final double VOICE_SECONDS = 12;

    private final Environment here;
    private final Mailbox<SoundCheckRequest> requests = new Mailbox<>(1);
    private final Latest<Status> status = new Latest<>(Status.NOTHING);
    private final Latest<Boolean> stopping = new Latest<>(false);

    /** How far a check has come. */
    public enum Step {
        NONE,
        OPENING,
        ROOM,
        VOICE,
        DONE,
        FAILED
    }

    /**
     * What is known of the check that is going on, or of the last one.
     *
     * @param step how far it has come
     * @param source the microphone's name; empty before it is known
     * @param seconds how long this step takes, in seconds; 0 if that is not known
     * @param check what was measured; empty before the end
     * @param when when it ended; empty before
     * @param trouble why it could not be done; empty if it could
     */
    public record Status(
            Step step,
            String source,
            double seconds,
            Optional<SoundCheck> check,
            Optional<Instant> when,
            String trouble) {
        static final Status NOTHING = at(Step.NONE, "", 0);

        static Status at(Step step, String source, double seconds) {
            return new Status(step, source, seconds, Optional.empty(), Optional.empty(), "");
        }

        /** Whether a check is going on. */
        public boolean goesOn() {
            return step == Step.OPENING || step == Step.ROOM || step == Step.VOICE;
        }
    }

    public SoundChecks(Environment here) {
        this.here = here;
    }

    public Status status() {
        return status.get();
    }

    /**
     * Asks for a check with the microphone that was chosen for this machine, the system's default if none was; nothing happens while
     * one goes on.
     *
     * @param free lets go of the microphone, if something else of the program has it; called when it is known that a check goes on, so
     *     that nothing takes it again, and before the check opens it
     */
    public synchronized void begin(Optional<String> chosen, Runnable free) {
        if (!status().goesOn()) {
            stopping.set(false);
            Status last = status();
            status.set(Status.at(Step.OPENING, chosen.orElse(""), 0));
            try {
                free.run();
            } catch (RuntimeException e) {
                status.set(last);
                throw e;
            }
            requests.add(new SoundCheckRequest(ROOM_SECONDS, VOICE_SECONDS, chosen, chosen, Optional.empty()));
        }
    }

    /** Ends the check that is going on. */
    public void stop() {
        stopping.set(true);
    }

    @Override
    public String role() {
        return "sound check";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public int doWork() {
        @Nullable SoundCheckRequest request = requests.poll();
        if (request == null) {
            return 0;
        }
        try {
            SoundCheck check = new SoundCheckService(here, new Told(), new Interruption(stopping::get)).check(request);
            status.set(new Status(
                    Step.DONE,
                    status().source(),
                    0,
                    Optional.of(check),
                    Optional.of(here.clock().instant()),
                    ""));
        } catch (ProblemException e) {
            failed(e.told());
        } catch (OperationInterrupted e) {
            status.set(Status.NOTHING);
        } catch (RuntimeException e) {
            failed("a fault of the program ended it; please report it");
            throw e;
        }
        return 1;
    }

    private void failed(String why) {
        status.set(new Status(Step.FAILED, status().source(), 0, Optional.empty(), Optional.empty(), why));
    }

    private final class Told implements SoundCheckListener {
        @Override
        public void begins(String source) {
            status.set(Status.at(Step.OPENING, source, 0));
        }

        @Override
        public void measuresRoom(double seconds) {
            status.set(Status.at(Step.ROOM, status().source(), seconds));
        }

        @Override
        public void measuresVoice(double seconds) {
            status.set(Status.at(Step.VOICE, status().source(), seconds));
        }
    }
}
