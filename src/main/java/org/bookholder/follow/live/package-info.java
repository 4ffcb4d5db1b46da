/** Works out the reading position while words are being said. */
@NullMarked
package org.bookholder.follow.live;

import org.jspecify.annotations.NullMarked;
