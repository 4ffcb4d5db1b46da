/** Pictures of a film, clip by clip, as work for FFmpeg's program. Begin with {@link org.bookholder.film.picture.ClipCommand}. */
@NullMarked
package org.bookholder.film.picture;

import org.jspecify.annotations.NullMarked;
