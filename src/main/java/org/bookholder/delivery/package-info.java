/**
 * Checks an exported film against a delivery profile and the script. Begin with {@link
 * org.bookholder.delivery.FilmCheck}.
 */
@NullMarked
package org.bookholder.delivery;

import org.jspecify.annotations.NullMarked;
