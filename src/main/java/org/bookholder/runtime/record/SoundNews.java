package org.bookholder.runtime.record;

import org.bookholder.timing.StreamTime;

/** What has changed about the saving of a take's sound. */
public sealed interface SoundNews {
    /** The disk refuses the sound, which is kept in memory; {@code reason} is for people. */
    record Refused(String reason) implements SoundNews {}

    /** All sound that was kept in memory is on disk, and so is what comes now. */
    record SavedAgain() implements SoundNews {}

    /** There was no room in memory either for what sounded between two times of the session: it is lost. */
    record NotSaved(StreamTime from, StreamTime to) implements SoundNews {}
}
