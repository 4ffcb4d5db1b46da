/** Script text to lines to words with their spoken forms; start at {@link org.bookholder.script.Script}. */
@NullMarked
package org.bookholder.script;

import org.jspecify.annotations.NullMarked;
