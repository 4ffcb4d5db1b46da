/** Services that check exported films against their script and profile. */
@NullMarked
package org.bookholder.app.delivery;

import org.jspecify.annotations.NullMarked;
