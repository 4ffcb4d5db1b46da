/** The sound of a room and a voice, checked before anything is recorded. */
@NullMarked
package org.bookholder.app.sound;

import org.jspecify.annotations.NullMarked;
