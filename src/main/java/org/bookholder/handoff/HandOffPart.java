package org.bookholder.handoff;

import java.util.List;

/** One kind of file in a hand-off. */
public interface HandOffPart {
    /** The kind's name on the command line, one lower-case word. */
    String name();

    /** What the files contain and whom they are for, in one phrase. */
    String description();

    /** Whether these files can only be written if takes were recorded. */
    default boolean needsSound() {
        return false;
    }

    /** The files, not written yet; empty if there is nothing to write. */
    List<HandOffFile> files(HandOff handOff);
}
