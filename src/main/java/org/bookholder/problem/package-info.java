/** What is told to a user whose input or machine stands in the way; see {@link org.bookholder.problem.ProblemException}. */
@NullMarked
package org.bookholder.problem;

import org.jspecify.annotations.NullMarked;
