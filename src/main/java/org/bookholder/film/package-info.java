/** Makes the film of a lesson: picture, sound and words of the clips that were chosen. Begin with {@link org.bookholder.film.FilmMaker}. */
@NullMarked
package org.bookholder.film;

import org.jspecify.annotations.NullMarked;
