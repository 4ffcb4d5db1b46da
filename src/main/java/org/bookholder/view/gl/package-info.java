/** The reading window itself: GLFW, OpenGL, FreeType and HarfBuzz. */
@NullMarked
package org.bookholder.view.gl;

import org.jspecify.annotations.NullMarked;
