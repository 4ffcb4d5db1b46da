/**
 * Turns audio into recognised words: {@link org.bookholder.speech.AudioSource} in, {@link
 * org.bookholder.speech.Hypothesis} out.
 */
@NullMarked
package org.bookholder.speech;

import org.jspecify.annotations.NullMarked;
