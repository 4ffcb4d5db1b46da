/** The reading position while the words are being said. */
@NullMarked
package org.bookholder.follow.live;

import org.jspecify.annotations.NullMarked;
