/** The follower's findings, as values: reading position, attempts, deviations, asides. */
@NullMarked
package org.bookholder.follow.model;

import org.jspecify.annotations.NullMarked;
