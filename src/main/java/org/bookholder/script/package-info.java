/**
 * Turns script text into lines of words with their spoken forms. The subpackages in reading order: {@code model} (the
 * values), {@code normalize} (text to words as people say them), {@code source} (files of each format), {@code
 * pronounce} (how words sound, and what a recogniser can hear of them).
 */
@NullMarked
package org.bookholder.script;

import org.jspecify.annotations.NullMarked;
