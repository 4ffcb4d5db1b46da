/** Evidence for both paths: what the open ear heard and how loud the sound was. */
@NullMarked
package org.bookholder.follow.evidence;

import org.jspecify.annotations.NullMarked;
