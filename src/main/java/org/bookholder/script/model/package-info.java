/** A script as values: lines of words, directions, and how each word may be spoken. */
@NullMarked
package org.bookholder.script.model;

import org.jspecify.annotations.NullMarked;
