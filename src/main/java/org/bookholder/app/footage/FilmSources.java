package org.bookholder.app.footage;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.WholeRecording;
import org.bookholder.footage.ffmpeg.FootageSource;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.Sources;
import org.bookholder.speech.AudioSource;

/** Uses a filmed recording instead of a microphone, and its time instead of the clock. */
public final class FilmSources implements Sources, InstantSource {
    private final WholeRecording recording;
    private final Instant begun;
    private volatile Optional<FootageSource> open = Optional.empty();

    /**
     * Creates the source of one take.
     *
     * @param otherwise start time to use if the camera did not record one
     */
    public FilmSources(WholeRecording recording, Instant otherwise) {
        this.recording = recording;
        this.begun = recording.recorded().orElse(otherwise);
    }

    @Override
    public AudioSource open() throws ProblemException {
        FootageSource source = FootageSource.open(recording);
        open = Optional.of(source);
        return source;
    }

    /** How its take is heard in some of the recording's channels; empty if all of them together were followed. */
    Optional<Hearing> hearing(int take) {
        return open.map(source -> source.hearing(take))
                .filter(heard -> !heard.channels().equals(Channels.ALL));
    }

    @Override
    public boolean live() {
        return false;
    }

    /** The time of day at which the camera recorded the last audio read. */
    @Override
    public Instant instant() {
        return begun.plus(open.map(o -> o.heard().toDuration()).orElse(Duration.ZERO));
    }
}
