/** What is said to people: the words for what the packages before tell as kinds and figures. */
@NullMarked
package org.bookholder.wording;

import org.jspecify.annotations.NullMarked;
