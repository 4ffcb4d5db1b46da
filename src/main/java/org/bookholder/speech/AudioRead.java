package org.bookholder.speech;

/** The answer of an {@link AudioSource} when it is read. */
public sealed interface AudioRead {
    /** Samples came. */
    record Samples(AudioBlock block) implements AudioRead {}

    /** Nothing yet; ask again in some milliseconds. */
    record NothingYet() implements AudioRead {}

    /** The file has been read to its end. */
    record Ended() implements AudioRead {}

    /**
     * The device is gone and will give nothing more.
     *
     * @param reason for people, for instance "the microphone was unplugged"
     */
    record Gone(String reason) implements AudioRead {}
}
