package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.SessionState;
import org.bookholder.speech.Ears;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Wav;

/** A reading put together from recordings of single sentences, and the script of their texts. */
final class HumanReading {
    private static final double PAUSE = 0.7;

    private final List<Clip> lines;
    private final int rate;
    private short[] sound;

    /**
     * A sentence that somebody read.
     *
     * @param text what was read
     * @param file the recording, a WAV file
     */
    record Clip(String text, Path file) {}

    /** Begins a reading of a script whose lines are these; nothing of it has been read yet. */
    HumanReading(List<Clip> lines, int rate) {
        this.lines = List.copyOf(lines);
        this.rate = rate;
        this.sound = new short[samples(PAUSE)];
    }

    /** Reads lines {@code from} to {@code to}, counted from 1, with a pause after each. */
    HumanReading reads(int from, int to) throws ProblemException {
        for (int line = from; line <= to; line++) {
            add(clip(line));
        }
        return this;
    }

    /** Begins a line and breaks off after {@code part} of its recording. */
    HumanReading breaksOff(int line, double part) throws ProblemException {
        short[] clip = clip(line);
        add(Arrays.copyOf(clip, (int) Math.round(clip.length * part)));
        return this;
    }

    /** Where the session stands after all of it was read from a WAV file, in virtual time, with these ears. */
    SessionState heardBy(Ears ears, Path folder) throws ProblemException {
        Path file = Wav.write(folder.resolve("reading.wav"), rate, sound);
        ReadingRig rig = new ReadingRig(script(), ears, false);
        Reading reading = rig.begin(WavSource.open(file));
        rig.pass(0.1);
        assertThat(rig.failures).isEmpty();
        assertThat(reading.progress().over()).isTrue();
        return reading.state().get();
    }

    private Script script() throws ProblemException {
        String text = String.join("\n", lines.stream().map(Clip::text).toList());
        return ScriptReader.parse("---\nlines: as-written\n---\n" + text, "reading.txt", Format.PLAIN_TEXT);
    }

    private short[] clip(int line) throws ProblemException {
        try (WavSource source = WavSource.open(lines.get(line - 1).file())) {
            assertThat(source.rate()).isEqualTo(rate);
            return Wav.samples(source);
        }
    }

    private void add(short[] more) {
        int at = sound.length;
        sound = Arrays.copyOf(sound, at + more.length + samples(PAUSE));
        System.arraycopy(more, 0, sound, at, more.length);
    }

    private int samples(double seconds) {
        return (int) Math.round(seconds * rate);
    }
}
