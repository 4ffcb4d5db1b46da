package org.bookholder.runtime.record;

import java.util.Optional;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeAudio;
import org.bookholder.journal.TakeRecording;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** Records takes in a session's folder. */
final class FolderTapes implements Tapes {
    private final SessionFolder folder;
    private final Overflow overflow;

    FolderTapes(SessionFolder folder, Overflow overflow) {
        this.folder = folder;
        this.overflow = overflow;
    }

    @Override
    public Overflow overflow() {
        return overflow;
    }

    @Override
    public Tape begin(int take, int rate, StreamTime start) throws ProblemException {
        return tape(folder.record(take, rate, start), start);
    }

    /** A tape that records so, and can be read. */
    static Tape tape(TakeRecording recording, StreamTime start) throws ProblemException {
        return new FolderTape(recording, TakeAudio.open(recording.path(), start));
    }

    private static final class FolderTape implements Tape {
        private final TakeRecording recording;
        private final TakeAudio audio;

        FolderTape(TakeRecording recording, TakeAudio audio) {
            this.recording = recording;
            this.audio = audio;
        }

        @Override
        public void append(AudioBlock block) throws ProblemException {
            recording.append(block);
        }

        @Override
        public void sync() throws ProblemException {
            recording.sync();
        }

        @Override
        public void close() throws ProblemException {
            recording.close();
        }

        @Override
        public Optional<AudioBlock> read(long first, int samples) throws ProblemException {
            return audio.readFrom(first, samples);
        }

        @Override
        public void closeReader() {
            audio.close();
        }
    }
}
