/**
 * Measures sound: room, voice and the way to the program, hum, loudness. Start with {@link org.bookholder.sound.SoundCheck}; {@link
 * org.bookholder.sound.LoudnessMeter} measures loudness.
 */
@NullMarked
package org.bookholder.sound;

import org.jspecify.annotations.NullMarked;
