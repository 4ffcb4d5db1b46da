/** The pickup list and the take log in the files that people and programs read. */
@NullMarked
package org.bookholder.handoff.pickups;

import org.jspecify.annotations.NullMarked;
