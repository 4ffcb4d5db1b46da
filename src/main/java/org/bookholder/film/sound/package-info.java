/** The sound of a film, to the sample. Begin with {@link org.bookholder.film.sound.FilmSound}. */
@NullMarked
package org.bookholder.film.sound;

import org.jspecify.annotations.NullMarked;
