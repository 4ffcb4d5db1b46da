/**
 * Camera and recorder files: their properties, and which part of a session each holds. Begin with {@link
 * org.bookholder.footage.Footage}.
 */
@NullMarked
package org.bookholder.footage;

import org.jspecify.annotations.NullMarked;
