/** The two recognisers, built on Vosk; the only package that uses it. */
@NullMarked
package org.bookholder.speech.vosk;

import org.jspecify.annotations.NullMarked;
