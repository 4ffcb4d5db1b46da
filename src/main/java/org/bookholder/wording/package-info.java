/** Texts for people: puts the kinds and figures of the earlier packages into words. */
@NullMarked
package org.bookholder.wording;

import org.jspecify.annotations.NullMarked;
