/** What a film is made of: values, and how they are worked out from the cut and the footage. Begin with {@link org.bookholder.film.plan.FilmPlanner}. */
@NullMarked
package org.bookholder.film.plan;

import org.jspecify.annotations.NullMarked;
