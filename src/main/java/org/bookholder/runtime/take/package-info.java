/** One running take: its capture, ears and recording, and their reports. */
@NullMarked
package org.bookholder.runtime.take;

import org.jspecify.annotations.NullMarked;
