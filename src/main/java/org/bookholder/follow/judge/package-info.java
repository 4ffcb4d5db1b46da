/** How one reading of a line is judged: which words were not read as written, and how sure that is. */
@NullMarked
package org.bookholder.follow.judge;

import org.jspecify.annotations.NullMarked;
