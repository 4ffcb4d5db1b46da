/** Exported films: their script and profile, and what is wrong with them. */
@NullMarked
package org.bookholder.app.delivery;

import org.jspecify.annotations.NullMarked;
