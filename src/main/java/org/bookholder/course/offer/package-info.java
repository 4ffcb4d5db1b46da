/** What a course's makers hand to others: a quotation, and a summary of how far it is. */
@NullMarked
package org.bookholder.course.offer;

import org.jspecify.annotations.NullMarked;
