package org.bookholder.speech;

/** The answer of an {@link AudioSource} when it is read. */
public sealed interface AudioRead {
    /** Tells {@code reader} what the answer is; returns what the reader makes of it. */
    int to(Reader reader);

    /** Who reads an audio source. Each method returns how much it did. */
    interface Reader {
        /** Samples came. */
        int samples(AudioBlock block);

        /** Nothing came yet. */
        default int nothingYet() {
            return 0;
        }

        /** The file is at its end. */
        int ended();

        /** The device is gone. */
        int gone(String reason);
    }

    /** Samples came. */
    record Samples(AudioBlock block) implements AudioRead {
        @Override
        public int to(Reader reader) {
            return reader.samples(block);
        }
    }

    /** Nothing yet; ask again in some milliseconds. */
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
     * The device is gone and will give nothing more.
     *
     * @param reason for people, for instance "the microphone was unplugged"
     */
    record Gone(String reason) implements AudioRead {
        @Override
        public int to(Reader reader) {
            return reader.gone(reason);
        }
    }
}
