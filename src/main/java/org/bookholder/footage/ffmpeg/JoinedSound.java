package org.bookholder.footage.ffmpeg;

import java.util.Arrays;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Footage;
import org.bookholder.footage.WholeRecording;
import org.bookholder.problem.ProblemException;

/**
 * The sound of a recording, one file after the other. Each is exactly as long as its picture, or as its sound if it has none, so
 * that the next one begins at the right sample; the last goes on as long as it sounds. Confined to one thread.
 */
final class JoinedSound implements AutoCloseable {
    private final WholeRecording recording;
    private final int rate;
    private final Channels heard;
    private FootageSound sound;
    private int part;
    private long given;
    private boolean ended;

    /** What the file before has beyond its last picture: it fills what the next one lacks at its beginning. */
    private short[] beyond = new short[0];

    /**
     * Opens its first file.
     *
     * @param rate samples a second that are wanted
     * @param heard the channels that are wanted
     * @throws ProblemException if it has no sound that can be decoded
     */
    JoinedSound(WholeRecording recording, int rate, Channels heard) throws ProblemException {
        this.recording = recording;
        this.rate = rate;
        this.heard = heard;
        sound = open(0);
    }

    private FootageSound open(int which) throws ProblemException {
        Footage footage = recording.parts().get(which);
        return FootageSound.open(footage.file(), rate, heard);
    }

    /** The samples that come next; empty at the end. */
    Optional<short[]> read() throws ProblemException {
        while (!last() && room() == 0) {
            next();
        }
        Optional<short[]> read = ended ? Optional.empty() : sound.read();
        ended = read.isEmpty();
        if (last()) {
            return read.map(this::begun);
        }
        // Where a file's sound ends before its picture, silence fills it, a second at a time.
        short[] samples = read.map(this::begun).orElseGet(() -> new short[rate]);
        if (samples.length > room()) {
            int room = (int) room();
            beyond = ended ? new short[0] : Arrays.copyOfRange(samples, room, samples.length);
            samples = Arrays.copyOf(samples, room);
        }
        given += samples.length;
        return Optional.of(samples);
    }

    private boolean last() {
        return part == recording.parts().size() - 1;
    }

    /** How many samples of this file are still to come. */
    private long room() {
        return recording.begins(part + 1).samples(rate) - recording.begins(part).samples(rate) - given;
    }

    private void next() throws ProblemException {
        while (!ended && beyond.length < rate) {
            Optional<short[]> more = sound.read();
            ended = more.isEmpty();
            more.ifPresent(samples -> beyond = StreamSound.Seam.append(beyond, samples));
        }
        FootageSound following = open(part + 1);
        sound.close();
        sound = following;
        part++;
        given = 0;
        ended = false;
    }

    /** Lays what the file before still had over the silence with which this one begins. */
    private short[] begun(short[] samples) {
        for (int i = 0; i < Math.min(beyond.length, samples.length) && samples[i] == 0; i++) {
            samples[i] = beyond[i];
        }
        beyond = new short[0];
        return samples;
    }

    @Override
    public void close() {
        sound.close();
    }
}
