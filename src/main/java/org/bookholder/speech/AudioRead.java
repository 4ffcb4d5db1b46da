package org.bookholder.speech;

/** What one read of an {@link AudioSource} returned. */
public sealed interface AudioRead {
    /** Calls the method of {@code reader} that fits this result, and returns that method's value. */
    int to(Reader reader);

    /** Handles each kind of result. Each method returns the amount of work done. */
    interface Reader {
        /** Samples arrived. */
        int samples(AudioBlock block);

        /** No samples yet. */
        default int nothingYet() {
            return 0;
        }

        /** The file has ended. */
        int ended();

        /** The device was lost. */
        int gone(String reason);
    }

    /** Samples arrived. */
    record Samples(AudioBlock block) implements AudioRead {
        @Override
        public int to(Reader reader) {
            return reader.samples(block);
        }
    }

    /** No samples yet; ask again in a few milliseconds. */
    record NothingYet() implements AudioRead {
        @Override
        public int to(Reader reader) {
            return reader.nothingYet();
        }
    }

    /** The file has been read to its end. */
    record Ended() implements AudioRead {
        @Override
        public int to(Reader reader) {
            return reader.ended();
        }
    }

    /**
     * The device was lost and will deliver no more samples.
     *
     * @param reason shown to the user, for instance "the microphone was unplugged"
     */
    record Gone(String reason) implements AudioRead {
        @Override
        public int to(Reader reader) {
            return reader.gone(reason);
        }
    }
}
