package org.bookholder.app.sound;

import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.SourceListener;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.sound.CheckRecording;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundPath;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.wav.WavSource;

/** Measures a room and a voice before a session. */
public final class SoundCheckService {
    /** Shortest useful measurement of voice and of room, in seconds. */
    public static final double SHORTEST_SECONDS = 3;

    private static final long PERIOD_MILLIS = 100;

    /** Seconds skipped before each part, for people to get ready. */
    private static final double SETTLING_SECONDS = 1;

    private final Environment here;
    private final SoundCheckListener listener;
    private final Interruption stop;

    /** Creates a check that reports to {@code listener} and can be stopped. */
    public SoundCheckService(Environment here, SoundCheckListener listener, Interruption stop) {
        this.here = here;
        this.listener = listener;
        this.stop = stop;
    }

    /**
     * Captures and measures.
     *
     * @throws ProblemException if there is no source of sound, or too little was heard
     */
    public SoundCheck check(SoundCheckRequest request) throws ProblemException {
        return request.recording().isPresent()
                ? hear(request, request.recording().get())
                : listen(request);
    }

    private SoundCheck hear(SoundCheckRequest request, Path file) throws ProblemException {
        WavSource source = WavSource.open(file);
        source.keepSides();
        listener.begins(source.name());
        CheckRecording recording = new CheckRecording(source.rate(), 0, request.roomSeconds(), request.voiceSeconds());
        gather(source, recording, file.toString(), () -> {});
        return checked(request, recording, file.toString());
    }

    private SoundCheck listen(SoundCheckRequest request) throws ProblemException {
        AudioSource source = here.equipment().microphoneWithSides(request.microphone(), here.nanoTime());
        listener.begins(source.name());
        CheckRecording recording =
                new CheckRecording(source.rate(), SETTLING_SECONDS, request.roomSeconds(), request.voiceSeconds());
        listener.measuresRoom(SETTLING_SECONDS + request.roomSeconds());
        gather(
                source,
                recording,
                source.name(),
                () -> listener.measuresVoice(SETTLING_SECONDS + request.voiceSeconds()));
        SoundCheck check = checked(request, recording, source.name());
        String heard = source.name();
        return request.chosen()
                .filter(chosen -> !names(heard, chosen))
                .map(chosen -> check.by(new SoundPath.OtherMicrophone(heard, chosen)))
                .orElse(check);
    }

    /** Whether a microphone is meant by a name, or by a part of it. */
    private static boolean names(String microphone, String chosen) {
        return microphone.toLowerCase(Locale.ROOT).contains(chosen.toLowerCase(Locale.ROOT));
    }

    private void gather(AudioSource source, CheckRecording recording, String where, Runnable roomDone)
            throws ProblemException {
        Latest<Boolean> roomHeard = new Latest<>(false);
        try (SourceListener listening = SourceListener.start(source, block -> {
            boolean more = recording.hear(block);
            roomHeard.set(recording.roomHeard());
            return more;
        })) {
            boolean told = false;
            while (!listening.await(PERIOD_MILLIS)) {
                stop.check();
                if (!told && roomHeard.get()) {
                    roomDone.run();
                    told = true;
                }
            }
            if (listening.fault().isPresent()) {
                throw new IllegalStateException(listening.fault().get());
            }
            if (!listening.trouble().isEmpty()) {
                throw new ProblemException(
                        "no more sound came in (" + listening.trouble() + ")", where, "check it, and begin again");
            }
        }
    }

    private static SoundCheck checked(SoundCheckRequest request, CheckRecording recording, String where)
            throws ProblemException {
        if (!recording.roomHeard() || recording.voiceSeconds() < SHORTEST_SECONDS) {
            throw new ProblemException(
                    String.format(
                            Locale.ROOT,
                            "is shorter than %.0f s of room and %.0f s of voice",
                            request.roomSeconds(),
                            SHORTEST_SECONDS),
                    where,
                    "record more, or let the room alone be heard for a shorter time");
        }
        return recording.check();
    }
}
