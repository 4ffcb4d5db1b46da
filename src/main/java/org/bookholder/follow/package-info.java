/**
 * Turns recognised words into the reading position and the outcome of each line; start at {@link
 * org.bookholder.follow.Follower}. The subpackages in reading order: {@code model} (the findings), {@code graph} (the
 * script as a graph, and the search through it), {@code evidence} (open ear and loudness), {@code live} (the position
 * while words are being said), {@code judge} (one reading of a line), {@code settle} (outcomes).
 */
@NullMarked
package org.bookholder.follow;

import org.jspecify.annotations.NullMarked;
