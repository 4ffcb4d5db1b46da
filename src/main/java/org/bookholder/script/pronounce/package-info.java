/**
 * Knows how words sound, and fits a script to the vocabulary of a recogniser. Start with {@link
 * org.bookholder.script.pronounce.ScriptPreparer}.
 */
@NullMarked
package org.bookholder.script.pronounce;

import org.jspecify.annotations.NullMarked;
