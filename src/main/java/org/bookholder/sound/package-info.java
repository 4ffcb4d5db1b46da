/**
 * Sound to what is said of it: room, voice, hum, loudness. Begin with {@link org.bookholder.sound.SoundCheck}; loudness is
 * {@link org.bookholder.sound.LoudnessMeter}.
 */
@NullMarked
package org.bookholder.sound;

import org.jspecify.annotations.NullMarked;
