/** The service that checks the sound of room and voice before a session. */
@NullMarked
package org.bookholder.app.sound;

import org.jspecify.annotations.NullMarked;
