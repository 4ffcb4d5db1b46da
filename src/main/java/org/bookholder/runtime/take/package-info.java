/** One running take: capture, ears and recording, and what they report. */
@NullMarked
package org.bookholder.runtime.take;

import org.jspecify.annotations.NullMarked;
