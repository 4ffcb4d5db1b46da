/** Session events and take audio to disk and back, safe against a kill at any moment. */
@NullMarked
package org.bookholder.journal;

import org.jspecify.annotations.NullMarked;
