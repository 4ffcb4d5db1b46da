/** Services for reading a lesson at the camera: the source of sound, the window, and how a reading ends. */
@NullMarked
package org.bookholder.app.reading;

import org.jspecify.annotations.NullMarked;
