/** What is said in a film, in the film's time. Begin with {@link org.bookholder.film.words.FilmWords}. */
@NullMarked
package org.bookholder.film.words;

import org.jspecify.annotations.NullMarked;
