/** WAV files read as an audio source. */
@NullMarked
package org.bookholder.speech.wav;

import org.jspecify.annotations.NullMarked;
