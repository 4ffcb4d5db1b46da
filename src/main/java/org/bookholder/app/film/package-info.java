/** Makes the film of a session. Begin with {@link org.bookholder.app.film.FilmService}. */
@NullMarked
package org.bookholder.app.film;

import org.jspecify.annotations.NullMarked;
