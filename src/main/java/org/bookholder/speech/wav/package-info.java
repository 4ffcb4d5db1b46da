/** Reads WAV files as an audio source, and defines the layout of the WAV files that the program writes. */
@NullMarked
package org.bookholder.speech.wav;

import org.jspecify.annotations.NullMarked;
