/** Services for camera and recorder files: match them with a session, or turn them into one. */
@NullMarked
package org.bookholder.app.footage;

import org.jspecify.annotations.NullMarked;
