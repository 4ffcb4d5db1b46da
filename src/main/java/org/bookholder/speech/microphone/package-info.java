/** Microphones through OpenAL; the only package that captures sound. */
@NullMarked
package org.bookholder.speech.microphone;

import org.jspecify.annotations.NullMarked;
