/**
 * An exported film to what is wrong with it, by a delivery profile and by the script. Begin with {@link
 * org.bookholder.delivery.FilmCheck}.
 */
@NullMarked
package org.bookholder.delivery;

import org.jspecify.annotations.NullMarked;
