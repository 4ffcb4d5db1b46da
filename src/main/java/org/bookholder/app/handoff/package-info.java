/** Services that turn a stored session into the files that its editor needs. */
@NullMarked
package org.bookholder.app.handoff;

import org.jspecify.annotations.NullMarked;
