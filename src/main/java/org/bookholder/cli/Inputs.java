package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.runtime.source.Sources;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.wav.WavSource;

/** Chooses where the sound comes from. */
final class Inputs {
    private final Environment here;
    private final Terminal terminal;
    private final ReadRequest request;

    Inputs(Environment here, Terminal terminal, ReadRequest request) {
        this.here = here;
        this.terminal = terminal;
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

    /** Whoever does not need to be followed can read without a microphone, and is told so. */
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
        terminal.err().println("bookholder: " + why + "; the reading is neither followed nor recorded");
    }

    private final class FileSources implements Sources {
        private final Path file;

        FileSources(Path file) {
            this.file = file;
        }

        @Override
        public AudioSource open() throws ProblemException {
            WavSource source = WavSource.open(file);
            source.warnings().forEach(warning -> terminal.err().println("bookholder: " + file + ": " + warning));
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
        public boolean live() {
            return true;
        }
    }
}
