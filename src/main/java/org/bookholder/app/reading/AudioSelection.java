package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.runtime.source.Sources;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.wav.WavSource;

/** Chooses the source of sound. */
final class AudioSelection {
    private final Environment here;
    private final ReadingListener listener;
    private final ReadingRequest request;

    AudioSelection(Environment here, ReadingRequest request, ReadingListener listener) {
        this.here = here;
        this.listener = listener;
        this.request = request;
    }

    Sources sources() throws ProblemException {
        if (request.audio().isPresent()) {
            return new FileSources(request.audio().get());
        }
        if (request.silent() || nothingToHear()) {
            return Sources.silent(here.nanoTime());
        }
        return new MicrophoneSources(request.microphone());
    }

    /** Whether to read without a microphone: none works, and the voice does not move the text. */
    private boolean nothingToHear() throws ProblemException {
        if (!request.silentIfNone()) {
            return false;
        }
        if (here.equipment().microphones().isEmpty()) {
            tellUnheard("there is no microphone");
            return true;
        }
        try {
            here.equipment().microphone(Optional.empty(), here.nanoTime()).close();
            return false;
        } catch (ProblemException e) {
            tellUnheard(e.what());
            return true;
        }
    }

    private void tellUnheard(String why) {
        listener.warned(why + "; the reading is neither followed nor recorded");
    }

    private final class FileSources implements Sources {
        private final Path file;

        FileSources(Path file) {
            this.file = file;
        }

        @Override
        public AudioSource open() throws ProblemException {
            WavSource source = WavSource.open(file);
            source.warnings().forEach(warning -> listener.warned(file + ": " + warning));
            return request.unpaced() ? source : new PacedSource(source, here.nanoTime());
        }

        @Override
        public boolean live() {
            return false;
        }
    }

    private final class MicrophoneSources implements Sources {
        private final Optional<String> name;

        MicrophoneSources(Optional<String> name) {
            this.name = name;
        }

        @Override
        public AudioSource open() throws ProblemException {
            return here.equipment().microphone(name, here.nanoTime());
        }

        @Override
        public Optional<AudioSource> again(String wanted) throws ProblemException {
            return here.equipment().microphones().contains(wanted)
                    ? Optional.of(here.equipment().microphone(Optional.of(wanted), here.nanoTime()))
                    : Optional.empty();
        }

        @Override
        public boolean live() {
            return true;
        }
    }
}
