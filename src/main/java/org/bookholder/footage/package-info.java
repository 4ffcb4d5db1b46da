/**
 * Camera and recorder files: what they hold, and where they lie in a session. Begin with {@link
 * org.bookholder.footage.Footage}.
 */
@NullMarked
package org.bookholder.footage;

import org.jspecify.annotations.NullMarked;
