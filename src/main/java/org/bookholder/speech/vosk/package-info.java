/** The two recognisers on Vosk; the only package that knows it. */
@NullMarked
package org.bookholder.speech.vosk;

import org.jspecify.annotations.NullMarked;
