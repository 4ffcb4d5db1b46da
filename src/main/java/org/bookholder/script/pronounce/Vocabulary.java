package org.bookholder.script.pronounce;

/** The words that a recogniser can write. */
@FunctionalInterface
public interface Vocabulary {
    /** Whether the recogniser knows {@code word}, given in lower case. */
    boolean contains(String word);
}
