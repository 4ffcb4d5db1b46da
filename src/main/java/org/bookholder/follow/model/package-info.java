/** What following finds out, as values: the reading position, attempts, deviations, asides. */
@NullMarked
package org.bookholder.follow.model;

import org.jspecify.annotations.NullMarked;
