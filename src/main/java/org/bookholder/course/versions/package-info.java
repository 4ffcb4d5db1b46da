/** The history of a lesson: its texts, recordings and films, and what changed from one to the next. */
@NullMarked
package org.bookholder.course.versions;

import org.jspecify.annotations.NullMarked;
