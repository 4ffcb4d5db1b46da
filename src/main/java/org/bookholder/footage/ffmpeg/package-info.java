/** Reading footage with FFmpeg. Begin with {@link org.bookholder.footage.ffmpeg.FootageFile}. */
@NullMarked
package org.bookholder.footage.ffmpeg;

import org.jspecify.annotations.NullMarked;
