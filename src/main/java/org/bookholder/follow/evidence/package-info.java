/** What the open ear heard and how loud the sound was, as evidence for both paths. */
@NullMarked
package org.bookholder.follow.evidence;

import org.jspecify.annotations.NullMarked;
