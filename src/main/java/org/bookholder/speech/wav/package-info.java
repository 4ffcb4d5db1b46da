/** WAV files read as an audio source, and the layout of those that the program writes. */
@NullMarked
package org.bookholder.speech.wav;

import org.jspecify.annotations.NullMarked;
