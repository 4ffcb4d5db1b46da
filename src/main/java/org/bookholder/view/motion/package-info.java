/** How the text moves. */
@NullMarked
package org.bookholder.view.motion;

import org.jspecify.annotations.NullMarked;
