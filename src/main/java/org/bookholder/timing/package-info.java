/** Time on the recording, counted in samples; see {@link org.bookholder.timing.StreamTime}. */
@NullMarked
package org.bookholder.timing;

import org.jspecify.annotations.NullMarked;
