/** A lesson read at the camera: what is listened with, what is shown, and how it ends. */
@NullMarked
package org.bookholder.app.reading;

import org.jspecify.annotations.NullMarked;
