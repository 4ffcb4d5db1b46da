package org.bookholder.bench;

import java.util.List;

/**
 * Somebody, or some program, who says things, in the order of a text.
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
