/** Keys and what they do. */
@NullMarked
package org.bookholder.view.input;

import org.jspecify.annotations.NullMarked;
