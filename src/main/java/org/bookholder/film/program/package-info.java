/** FFmpeg's program at work. Begin with {@link org.bookholder.film.program.FfmpegRun}. */
@NullMarked
package org.bookholder.film.program;

import org.jspecify.annotations.NullMarked;
