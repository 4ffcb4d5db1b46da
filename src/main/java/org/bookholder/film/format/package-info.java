/** What a film is to be as a file, by the delivery profile. Begin with {@link org.bookholder.film.format.FormatChooser}. */
@NullMarked
package org.bookholder.film.format;

import org.jspecify.annotations.NullMarked;
