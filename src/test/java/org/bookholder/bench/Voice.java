package org.bookholder.bench;

import java.util.List;

/**
 * A person or program that reads a text aloud, utterance by utterance.
 *
 * @param name for people
 * @param utterances at least one
 */
record Voice(String name, List<Utterance> utterances) {
    /** Copies the list. */
    Voice {
        utterances = List.copyOf(utterances);
    }
}
