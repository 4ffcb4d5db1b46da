/** Captions of the chosen attempts. Begin with {@link org.bookholder.handoff.captions.CaptionWriter}. */
@NullMarked
package org.bookholder.handoff.captions;

import org.jspecify.annotations.NullMarked;
